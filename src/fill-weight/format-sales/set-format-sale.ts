import { Injectable } from '@nestjs/common';
import type { Asked, Change } from '../../journal/entry-draft.js';
import { RecordChange } from '../../journal/record-change.js';
import { voidFact } from '../../journal/void-fact.js';
import { canonicalText } from '../../platform/canonical-text.js';
import type { Tx } from '../../platform/database/unit-of-work.js';
import { Ids } from '../../platform/ids.js';
import { Refusal } from '../../platform/refusal.js';
import { ofSite } from '../../plant/of-site.js';
import { formatOf } from '../../plant/plant-facts.js';
import { insertVersion, settleRuleBeginning } from '../../plant/valid-from.js';
import { currencyCode } from './currency-field.js';
import { FormatSale } from './format-sale.entity.js';
import type { SetFormatSaleForm } from './format-sale.form.js';
import { saleOfFormat } from './format-sales.js';

/**
 * Says in which markets a format is sold and what a kilogram is worth, from an instant on. The first may reach back; a later
 * one begins now or later, and takes the place of one that has not begun yet.
 * Refusals: `sold-nowhere`, `market-twice`, `currency-without-price`, `valid-from-not-later`, `valid-from-in-the-past`; not found: format.
 */
@Injectable()
export class SetFormatSale {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: SetFormatSaleForm): Promise<{ readonly id: string; readonly validFrom: string }> {
    return this.changes.run(asked, form, async (tx, change) => {
      const format = ofSite(asked.actor, 'pack-format', await formatOf(tx, form.formatId));
      const { markets } = form;
      if (markets.length === 0) throw new Refusal('sold-nowhere', { format: format.code });
      if (new Set(markets).size < markets.length) throw new Refusal('market-twice', { markets: markets.join(', ') });
      const pricePerKilogram = form.pricePerKilogram ?? null;
      const currency = currencyCode(form.currency);
      if (pricePerKilogram === null && currency !== null) throw new Refusal('currency-without-price', { currency });
      const now = change.recordedAt;
      await takeBackComing(tx, format.id, change);
      const before = await saleOfFormat(tx, format.id, now);
      const beginning = { validFrom: form.validFrom ?? null, reason: null, now, latest: before?.validFrom ?? null };
      const validFrom = settleRuleBeginning(beginning);
      const id = this.ids.next();
      const sale = { pricePerKilogram, currency, validFrom };
      await insertVersion(tx, FormatSale, { id, formatId: format.id, markets: canonicalText([...markets]), ...sale });
      return {
        answer: { id, validFrom },
        entry: {
          action: 'set-format-sale',
          subject: { kind: 'pack-format', id: format.id },
          ...(before === null ? {} : { before: { ...before, markets: [...before.markets] } }),
          after: { id, markets: [...markets], ...sale },
        },
      };
    });
  }
}

/** What has not begun yet was never used: the new one takes its place. */
async function takeBackComing(tx: Tx, formatId: string, change: Change): Promise<void> {
  const coming = await tx.sql<{ id: string }>`
    SELECT "id" FROM "format_sale"
    WHERE "format_id" = ${formatId} AND "voided_by" IS NULL AND "valid_from" > ${change.recordedAt}`;
  for (const { id } of coming) await voidFact(tx, FormatSale, id, change);
}
