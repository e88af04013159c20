import { Inject, Injectable } from '@nestjs/common';
import { EndTip } from '../../hopper/end-tip.js';
import { TipBag } from '../../hopper/tip-bag.js';
import { tipOf } from '../../hopper/tips.js';
import type { Asked } from '../../journal/entry-draft.js';
import type { Instant } from '../../platform/clock.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { BadForm, Refusal } from '../../platform/refusal.js';
import { clockTime, type WrittenTipEndForm, type WrittenTipForm } from './paper-form.form.js';
import { andThen, hopperThen, writtenOf, type RowAt } from './row-at.js';
import { asWritten, instantAfter, type Written } from './row-asked.js';

type WeighedBack = Pick<WrittenTipEndForm, 'grossGrams' | 'tareGrams' | 'scaleId'>;

/** Keys in the rows of a sheet of tips. */
@Injectable()
export class KeyInTips {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly tipBag: TipBag,
    private readonly endTip: EndTip,
  ) {}

  /** A bag that was tipped: whole, or in part and weighed back. Answers when. */
  async tip(at: RowAt, form: WrittenTipForm): Promise<Instant> {
    const isPart = refuseHalfAWeighing(form);
    const written = await writtenOf(this.reader, at, form);
    const offAt = form.offTime == null ? written.at : offTimeOf(at, written.at, form.offTime);
    const hopperId = await hopperThen(this.reader, at, written.at);
    const whole = { isOff: !isPart, offAt: isPart ? null : offAt };
    const tip = { bag: form.bag, hopperId, openedAt: written.at, ...whole, identifiedBy: 'typed' } as const;
    const { id } = await asWritten(this.reader, at.asked, { written, action: 'tip-bag' }, (asked) =>
      this.tipBag.execute(asked, tip),
    );
    if (isPart) await this.takeOff(andThen(at.asked), id, { ...written, at: offAt }, form);
    return written.at;
  }

  /** The end of a tip that hangs by the records. Answers when. */
  async end(at: RowAt, form: WrittenTipEndForm): Promise<Instant> {
    refuseHalfAWeighing(form);
    const { row, asked, sheet } = at;
    const begun = row.entries[0];
    if (row.openEnd?.of !== 'tip' || begun === undefined) {
      throw new Refusal('paper-row-not-begun', { sheet: sheet.facts.number, row: row.row });
    }
    const { openedAt } = await tipOf(this.reader, asked.actor.siteId, row.openEnd.id);
    const offAt = offTimeOf(at, openedAt, form.offTime);
    const written = { sheet: sheet.facts.number, row: row.row, at: offAt, writtenBy: begun.writtenBy };
    await this.takeOff(asked, row.openEnd.id, written, form);
    return offAt;
  }

  private async takeOff(
    asked: Asked,
    tipId: string,
    written: Written,
    { grossGrams = null, tareGrams = null, scaleId = null }: WeighedBack,
  ): Promise<void> {
    const off = { offAt: written.at, grossGrams, tareGrams, scaleId };
    await asWritten(this.reader, asked, { written, action: 'end-tip' }, (one) => this.endTip.execute(one, tipId, off));
  }
}

function offTimeOf(at: RowAt, openedAt: Instant, typed: string): Instant {
  return instantAfter(openedAt, { field: 'offTime', time: clockTime(typed) }, at.rule);
}

/**
 * Whether something was weighed back.
 *
 * @throws {BadForm} where a part of the weighing is missing: nothing of the row is recorded then
 */
function refuseHalfAWeighing({ grossGrams, tareGrams, scaleId }: WeighedBack): boolean {
  const weighed = Object.entries({ grossGrams, tareGrams, scaleId });
  const missing = weighed.filter(([, given]) => given == null);
  if (missing.length === weighed.length) return false;
  if (missing.length > 0) throw new BadForm(missing.map(([field]) => ({ field, code: 'field-missing', facts: {} })));
  return true;
}
