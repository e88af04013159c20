import { SetFormatSale } from '../../fill-weight/format-sales/set-format-sale.js';
import { ChangeSetting } from '../../fill-weight/line-settings/change-setting.js';
import type { JudgedMarket } from '../../fill-weight/run-weights/judged-markets.js';
import type { Asked } from '../../journal/entry-draft.js';
import type { FormatCode } from '../life/demo-plan.js';
import { natureOf } from '../life/pack-formats.js';
import { idIn, type Give } from './demo-hand.js';

/** Invented: where the demo's packs are sold, and what a kilogram is worth, in euros. */
const sales: readonly (readonly [FormatCode, readonly JudgedMarket[], string])[] = [
  ['WS-2KG', ['eu', 'uk'], '0.74'],
  ['WS-1KG', ['eu'], '0.79'],
  ['XF-1KG', ['eu', 'us'], '0.92'],
];

/** The fillers of the demo give so much more than they show. */
const offsetGrams = 0.6;

/** Where formats are sold, and what the filler of each line is set to for them. */
export async function setUpFilling(
  give: Give,
  asked: Asked,
  of: { readonly lines: ReadonlyMap<string, string>; readonly formats: ReadonlyMap<FormatCode, string> },
): Promise<void> {
  for (const [code, markets, pricePerKilogram] of sales) {
    const formatId = idIn(of.formats, code);
    await give(SetFormatSale).execute(asked, { formatId, markets: [...markets], pricePerKilogram, currency: 'EUR' });
    const { setpointGrams } = natureOf({ format: code, perMinute: 0 });
    for (const lineId of of.lines.values()) {
      const shown = (setpointGrams - offsetGrams).toFixed(1);
      await give(ChangeSetting).execute(asked, lineId, { formatId, setpointGrams: shown, reason: 'First setting' });
    }
  }
}
