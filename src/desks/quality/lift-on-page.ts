import { Injectable } from '@nestjs/common';
import { LiftHold } from '../../disposition/lift-hold.js';
import type { Asked } from '../../journal/entry-draft.js';
import { partProof } from '../../people/proof.form.js';
import { ProveAgain } from '../../people/prove-again.js';
import type { LiftOnPageForm } from './hold-file.form.js';

/** Lifts a hold for somebody who has proved once more who they are; nothing of the proof goes any further. */
@Injectable()
export class LiftOnPage {
  constructor(
    private readonly proveAgain: ProveAgain,
    private readonly liftHold: LiftHold,
  ) {}

  async execute(asked: Asked, form: LiftOnPageForm & { readonly hold: string }, address: string): Promise<string> {
    const { proof, rest } = partProof(form);
    await this.proveAgain.execute(asked.actor, proof, { address });
    const { number } = await this.liftHold.execute(asked, { hold: rest.hold, reason: rest.liftReason });
    return number;
  }
}
