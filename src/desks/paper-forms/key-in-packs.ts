import { Inject, Injectable } from '@nestjs/common';
import type { Asked } from '../../journal/entry-draft.js';
import { CountLoosePacks } from '../../packing/count-loose-packs.js';
import { CountPacks } from '../../packing/count-packs.js';
import { RemoveSugar } from '../../packing/remove-sugar.js';
import { BuildPallet } from '../../pallets/build-pallet.js';
import type { Instant } from '../../platform/clock.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { Refusal } from '../../platform/refusal.js';
import { type WrittenCountForm, type WrittenPalletForm, type WrittenRemovalForm } from './paper-form.form.js';
import type { PaperForm } from './paper-forms.js';
import { runThen, writtenOf, type RowAt } from './row-at.js';
import { asWritten, type Written } from './row-asked.js';

/** Keys in what was written of packs: pallets, counts, what was taken away. Each answers when it happened. */
@Injectable()
export class KeyInPacks {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly buildPallet: BuildPallet,
    private readonly countPacks: CountPacks,
    private readonly countLoose: CountLoosePacks,
    private readonly removeSugar: RemoveSugar,
  ) {}

  /** A pallet that bears a number of this sheet. */
  async pallet(at: RowAt, { sscc, packCount, label, ...row }: WrittenPalletForm): Promise<Instant> {
    refuseStruckNumber(at.sheet, at.row.row, sscc.slice(-18));
    const written = await writtenOf(this.reader, at, row);
    const run = await runThen(this.reader, at, written.at);
    const pallet = { run, packCount, sscc, builtAt: written.at, label: label ?? false };
    await this.keyIn(at.asked, written, 'build-pallet', (asked) => this.buildPallet.execute(asked, pallet));
    return written.at;
  }

  async count(at: RowAt, { packCount, loosePackCount, ...row }: WrittenCountForm): Promise<Instant> {
    const written = await writtenOf(this.reader, at, row);
    const run = await runThen(this.reader, at, written.at);
    const counted = { packCount, countedAt: written.at };
    await (loosePackCount == null
      ? this.keyIn(at.asked, written, 'count-packs', (asked) => this.countPacks.execute(asked, run, counted))
      : this.keyIn(at.asked, written, 'count-loose-packs', (asked) =>
          this.countLoose.execute(asked, run, { ...counted, loosePackCount }),
        ));
    return written.at;
  }

  async removal(at: RowAt, form: WrittenRemovalForm): Promise<Instant> {
    const written = await writtenOf(this.reader, at, form);
    const { kind, netGrams = null, packCount = null, scaleId = null, removalReason, fate } = form;
    const what = { kind, netGrams, packCount, scaleId, removalReason, fate };
    const left = { ...what, lineId: at.sheet.lineId, removedAt: written.at };
    await this.keyIn(at.asked, written, 'remove-sugar', (asked) => this.removeSugar.execute(asked, left));
    return written.at;
  }

  private keyIn<Answer>(
    asked: Asked,
    written: Written,
    action: string,
    run: (asked: Asked) => Promise<Answer>,
  ): Promise<Answer> {
    return asWritten(this.reader, asked, { written, action }, run);
  }
}

/** A number that was struck is on no pallet; one of another row is used up there. */
function refuseStruckNumber({ facts, rows }: PaperForm, row: number, sscc: string): void {
  const other = rows.find((one) => one.sscc === sscc && one.row !== row && one.state === 'struck');
  if (other === undefined) return;
  throw new Refusal('paper-number-struck', { sscc, sheet: facts.number, row: other.row });
}
