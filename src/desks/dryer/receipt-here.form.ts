import { readKilograms } from '../../core/units/grams.js';
import type { WeighedBagForm } from '../../drying/receipt.form.js';
import type { BagTypeRow } from '../../plant/bag-types.js';
import { BadForm } from '../../platform/refusal.js';
import { IdField, TextField } from '../../platform/web/fields.js';

export class ReceiptHereForm {
  @IdField()
  gradeId!: string;

  @TextField({ most: 40, example: 'SUP-07' })
  supplierCode!: string;

  @TextField({ most: 60, example: 'A-4471' })
  supplierLot!: string;

  @TextField({ most: 60, example: 'DN 88213' })
  documentNumber!: string;

  @IdField()
  bagTypeId!: string;

  @IdField()
  scaleId!: string;

  @IdField({ optional: true })
  placeId?: string | null;

  @TextField({ most: 2000, says: 'One line for each bag: its gross weight in kilograms, then its SSCC if it has one' })
  weights!: string;
}

const mostBags = 60;

/**
 * The bags of a receipt, a line each.
 *
 * @throws {BadForm} naming the line that cannot be read, and what it would take
 */
export function weighedBags(form: ReceiptHereForm, type: BagTypeRow): readonly WeighedBagForm[] {
  const lines = form.weights
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');
  if (lines.length > mostBags) throw wrongLine(mostBags + 1, lines[mostBags] ?? '');
  return lines.map((line, place) => {
    const [, weight = '', sscc] = /^(.*?)(?:[\s;]+(?:\(00\))?(\d{18}))?$/.exec(line) ?? [];
    const read = readKilograms(weight);
    if (!read.ok || read.grams > 2_500_000) throw wrongLine(place + 1, line);
    return {
      grossGrams: read.grams,
      tareGrams: type.usualTareGrams,
      isPresetTare: true,
      safeLoadGrams: type.safeLoadGrams,
      sscc: sscc ?? null,
      placeId: form.placeId ?? null,
    };
  });
}

function wrongLine(line: number, text: string): BadForm {
  return new BadForm([{ field: 'weights', code: 'receipts-line-wrong', facts: { line, text: text.slice(0, 60) } }]);
}
