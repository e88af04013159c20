import { Inject, Injectable } from '@nestjs/common';
import { CloseBag } from '../../drying/close-bag.js';
import { PrintBagLabel } from '../../drying/print-bag-label.js';
import type { Asked } from '../../journal/entry-draft.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { BadForm } from '../../platform/refusal.js';
import type { CloseHereForm } from './dryer.form.js';

/** A bag that was closed at the desk, with the label that was given out for it. */
export interface ClosedHere {
  readonly number: string;
  readonly netGrams: number;
  readonly paperId: string;
}

/** Closes the bag that hangs there and gives out its label: one tap, two entries. Sent twice, both are found again. */
@Injectable()
export class CloseHere {
  constructor(
    private readonly closeBag: CloseBag,
    private readonly printLabel: PrintBagLabel,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  async execute(asked: Asked, form: CloseHereForm): Promise<ClosedHere> {
    const weighedTare = form.tareGrams ?? null;
    const tareGrams = weighedTare ?? (await usualTareOf(this.reader, form.bagId));
    if (tareGrams === null) throw new BadForm([{ field: 'tareGrams', code: 'field-missing', facts: {} }]);
    const { bagId: bag, grossGrams, scaleId } = form;
    const confirmed = form.confirmed ?? null;
    const weights = { grossGrams, tareGrams, isPresetTare: weighedTare === null, scaleId };
    const { number, netGrams } = await this.closeBag.execute(asked, { bag, ...weights, isTyped: true, confirmed });
    const key = asked.key === null ? null : `${asked.key}-label`;
    const { paperId } = await this.printLabel.execute({ ...asked, key, seen: null }, { bag });
    return { number, netGrams, paperId };
  }
}

async function usualTareOf(from: ReadFrom, bagId: string): Promise<number | null> {
  const [row] = await from.sql<{ grams: number }>`
    SELECT t."usual_tare_grams" AS "grams" FROM "bag_type_use" u JOIN "bag_type" t ON t."id" = u."bag_type_id"
    WHERE u."bag_id" = ${bagId}`;
  return row?.grams ?? null;
}
