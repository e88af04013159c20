import { Injectable } from '@nestjs/common';
import { whyNotTaken } from '../../open-points/kept-entry-words.js';
import type { Instant } from '../../platform/clock.js';
import { BadForm } from '../../platform/refusal.js';
import { KeepWrittenRow, mayBeKept } from './keep-written-row.js';
import { KeyInChecks } from './key-in-checks.js';
import { KeyInPacks } from './key-in-packs.js';
import { KeyInStops } from './key-in-stops.js';
import { KeyInTips } from './key-in-tips.js';
import type { WrittenRowForm } from './paper-form.form.js';
import type { RowAt } from './row-at.js';

/** What became of a row. */
export interface RowTaken {
  readonly happenedAt: Instant;
  readonly isKept: boolean;
}

/** Keys in rows of every kind of sheet. */
@Injectable()
export class KeyInRows {
  constructor(
    readonly tips: KeyInTips,
    readonly stops: KeyInStops,
    readonly packs: KeyInPacks,
    readonly checks: KeyInChecks,
    private readonly keepRow: KeepWrittenRow,
  ) {}

  /** What the records contradict is kept as it is written, once whoever keys it in has seen why and says so. */
  async takeOrKeep<Form extends object>(
    at: RowAt,
    form: Form,
    keyIn: (at: RowAt, form: Form) => Promise<Instant>,
  ): Promise<RowTaken> {
    try {
      return { happenedAt: await keyIn(at, form), isKept: false };
    } catch (error) {
      const why = error instanceof BadForm ? null : whyNotTaken(error);
      if (why === null || !mayBeKept(why.code) || !isToBeKept(form)) throw error;
      return { happenedAt: await this.keepRow.execute(at, form, why), isKept: true };
    }
  }
}

function isToBeKept(form: object): form is WrittenRowForm {
  return 'keep' in form && form.keep === 'as-written';
}
