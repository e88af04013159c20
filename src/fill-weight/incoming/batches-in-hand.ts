import { Injectable } from '@nestjs/common';
import { NotTaken } from '../../platform/refusal.js';

/** Batches that are read and written at a time; the next are asked to come again. */
const mostInHand = 4;

/** Reads few batches at a time, by whatever way they come. */
@Injectable()
export class BatchesInHand {
  private count = 0;

  /** @throws {NotTaken} `weights-in-hand` */
  async run<Answer>(work: () => Promise<Answer>): Promise<Answer> {
    if (this.count >= mostInHand) throw new NotTaken('busy', 'weights-in-hand', { most: mostInHand });
    this.count += 1;
    try {
      return await work();
    } finally {
      this.count -= 1;
    }
  }
}
