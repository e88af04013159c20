import { Injectable } from '@nestjs/common';
import type { Asked } from '../../journal/entry-draft.js';
import { BatchesInHand } from '../incoming/batches-in-hand.js';
import { ReceiveWeights, type DryRun, type WeightsAnswer } from '../receive-weights.js';
import type { StoreWeightFileForm } from './weight-file.form.js';
import { readWeightFile } from './read-weight-file.js';
import { WeightFiles, type BroughtFile } from './weight-files.js';

/** A file with what storing it would bring. */
interface FileDryRun {
  readonly file: BroughtFile;
  readonly found: DryRun;
}

/**
 * Stores the weights of a file that was brought, as it was shown. What is known already counts once, so storing it again
 * changes nothing. Refusals: those of a batch (`ReceiveWeights`), `file-is-no-text`; not found: weight file.
 */
@Injectable()
export class StoreWeightFile {
  constructor(
    private readonly files: WeightFiles,
    private readonly inHand: BatchesInHand,
    private readonly receive: ReceiveWeights,
  ) {}

  /** Everything that storing does, but for the writing. */
  async dryRun(siteId: string, fileId: string): Promise<FileDryRun> {
    const file = await this.files.find(siteId, fileId);
    return this.inHand.run(async () => ({ file, found: await this.receive.dryRun(await readWeightFile(file, true)) }));
  }

  async execute(asked: Asked, fileId: string, form: StoreWeightFileForm): Promise<WeightsAnswer> {
    const file = await this.files.find(asked.actor.siteId, fileId);
    return this.inHand.run(async () => {
      const batch = await readWeightFile(file, form.skipsFaults ?? false);
      // The times are those of the machine that wrote the file, not of the desk that brings it.
      return this.receive.execute({ ...asked, deviceOffsetMilliseconds: null }, batch);
    });
  }
}
