import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { siteOf } from './plant-facts.js';
import type { SiteRow } from './plant-rows.js';
import { refuseWrongNumbers } from './site-numbers.js';
import { SiteRevision } from './site-revision.entity.js';
import type { ChangeSiteForm } from './site.form.js';

/**
 * A site is called otherwise, or gets its own numbers, time zone and production day in the place of those it was
 * opened with. The name may change at any time; all else only until the first number was given out, since what is
 * printed and dated by it stays so.
 * Refusals: `time-zone-unknown`, `gln-wrong`, `company-prefix-wrong`, `gln-not-of-prefix`, `site-in-use`,
 * `shifts-begin-otherwise`.
 */
@Injectable()
export class ChangeSite {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: ChangeSiteForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, form, async (tx, change) => {
      const { siteId } = asked.actor;
      const before = await siteOf(tx, siteId);
      const after = { ...columnsOf(before), ...columnsOf(form) };
      refuseWrongNumbers(after);
      await refuseWhereInUse(tx, before, after);
      await tx.insert(SiteRevision, { id: this.ids.next(), siteId, ...after, changedAt: change.recordedAt });
      return {
        answer: { id: siteId },
        entry: {
          action: 'change-site',
          subject: { kind: 'site', id: siteId },
          before: { ...columnsOf(before) },
          after: { ...after },
        },
      };
    });
  }
}

type SiteColumns = Omit<SiteRow, 'id' | 'code' | 'paperLanguage'>;

function columnsOf(site: SiteColumns): SiteColumns {
  const { name, timeZone, productionDayStart, gln, companyPrefix, ssccExtensionDigit } = site;
  return { name, timeZone, productionDayStart, gln, companyPrefix, ssccExtensionDigit };
}

const fixedInUse = ['timeZone', 'productionDayStart', 'gln', 'companyPrefix', 'ssccExtensionDigit'] as const;

async function refuseWhereInUse(tx: Tx, before: SiteRow, after: SiteColumns): Promise<void> {
  if (fixedInUse.every((name) => before[name] === after[name])) return;
  // Every bag, run, sample, pallet and paper has a number of a series: the first one ties the site down.
  const [series] = await tx.sql<{ name: string }>`
    SELECT "name" FROM "number_series" WHERE "site_id" = ${before.id} ORDER BY "name" LIMIT 1`;
  if (series !== undefined) throw new Refusal('site-in-use', { series: series.name });
  if (before.productionDayStart === after.productionDayStart) return;
  const [pattern] = await tx.sql<{ id: string }>`
    SELECT "id" FROM "shift_pattern" WHERE "site_id" = ${before.id} AND "voided_by" IS NULL LIMIT 1`;
  if (pattern !== undefined) throw new Refusal('shifts-begin-otherwise', { start: before.productionDayStart });
}
