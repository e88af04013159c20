import { Inject, Injectable } from '@nestjs/common';
import { CheckLine } from '../../line-checks/check-line.js';
import { planAt } from '../../line-checks/check-plans.js';
import type { Instant } from '../../platform/clock.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { Refusal } from '../../platform/refusal.js';
import { checkOfPage } from '../line-checks/check-page.form.js';
import type { WrittenCheckForm } from './paper-form.form.js';
import { asWritten } from './row-asked.js';
import { writtenOf, type RowAt } from './row-at.js';

/** Keys in the rows of a sheet of line checks: what each piece came to, as the plan of then asks. Answers when it happened. */
@Injectable()
export class KeyInChecks {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly checkLine: CheckLine,
  ) {}

  /** Refusals: `paper-check-not-there`, `paper-check-asked-otherwise`, those of the check. */
  async check(at: RowAt, form: WrittenCheckForm): Promise<Instant> {
    const { facts } = at.sheet;
    if (facts.checks?.some(({ planId }) => planId === form.planId) !== true) {
      throw new Refusal('paper-check-not-there', { sheet: facts.number });
    }
    const written = await writtenOf(this.reader, at, form);
    const plan = await planAt(this.reader, at.asked.actor.siteId, form.planId, written.at);
    // Results go by their place: they are understood by the pieces that the page showed, or not at all.
    if (plan.id !== form.versionId) {
      throw new Refusal('paper-check-asked-otherwise', { station: plan.station, at: written.at, versionId: plan.id });
    }
    const check = { ...checkOfPage(plan, form), checkedAt: written.at, reason: null };
    await asWritten(this.reader, at.asked, { written, action: 'check-line' }, (asked) =>
      this.checkLine.execute(asked, plan.planId, check),
    );
    return written.at;
  }
}
