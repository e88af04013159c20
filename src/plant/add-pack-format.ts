import { Injectable } from '@nestjs/common';
import { gtinProblem, isVariableMeasure, toGtin14 } from '../core/identifiers/gtin.js';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { refuseCodePattern } from './check-code-pattern.js';
import type { AddPackFormatForm } from './grade.form.js';
import { insertCoded } from './insert-coded.js';
import { ofSite } from './of-site.js';
import { PackFormatGrade } from './pack-format-grade.entity.js';
import { PackFormat } from './pack-format.entity.js';
import { gradeOf } from './plant-facts.js';

/**
 * A retail pack is set up as it is sold: number, nominal quantity, what it takes and what is printed on it.
 * Refusals: `gtin-not-digits`, `gtin-wrong-length`, `gtin-check-digit`, `gtin-restricted-prefix`,
 * `gtin-variable-measure`, `gtin-of-other-content`, `assumed-limits-not-around-nominal`, `code-taken`, and those of the
 * code pattern.
 */
@Injectable()
export class AddPackFormat {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: AddPackFormatForm): Promise<{ readonly id: string; readonly gtin: string }> {
    return this.changes.run(asked, form, async (tx, change) => {
      const { siteId } = asked.actor;
      const row = { ...columnsOf(form), gtin: readGtin(form.gtin) };
      refuseAssumedLimits(form);
      await refuseCodePattern(tx, { siteId, at: change.recordedAt }, row);
      await refuseOtherContent(tx, siteId, row);
      const gradeIds = [...new Set(form.gradeIds)];
      for (const gradeId of gradeIds) ofSite(asked.actor, 'grade', await gradeOf(tx, gradeId));
      const id = this.ids.next();
      await insertCoded(tx, PackFormat, { id, siteId, ...row });
      await tx.insert(
        PackFormatGrade,
        gradeIds.map((gradeId) => ({ id: this.ids.next(), formatId: id, gradeId })),
      );
      return {
        answer: { id, gtin: row.gtin },
        entry: {
          action: 'add-pack-format',
          subject: { kind: 'pack-format', id },
          touches: gradeIds.map((gradeId) => ({ kind: 'grade', id: gradeId })),
          after: { ...row, gradeIds },
        },
      };
    });
  }
}

function readGtin(text: string): string {
  const problem = gtinProblem(text);
  if (problem !== null) throw new Refusal(`gtin-${problem}`, { gtin: text });
  if (isVariableMeasure(text)) throw new Refusal('gtin-variable-measure', { gtin: text });
  return toGtin14(text);
}

function refuseAssumedLimits(form: AddPackFormatForm): void {
  const nominalMilligrams = form.nominalGrams * 1000;
  const { assumedLowerMilligrams: lower, assumedUpperMilligrams: upper } = form;
  if (lower > nominalMilligrams || upper < nominalMilligrams) {
    throw new Refusal('assumed-limits-not-around-nominal', { lower, upper, nominal: nominalMilligrams });
  }
}

/** One number may be printed in several ways, but it is one content. */
async function refuseOtherContent(tx: Tx, siteId: string, row: { gtin: string; nominalGrams: number }): Promise<void> {
  const [other] = await tx.sql<{ code: string; nominalGrams: number }>`
    SELECT "code", "nominal_grams" AS "nominalGrams" FROM "pack_format"
    WHERE "site_id" = ${siteId} AND "gtin" = ${row.gtin} AND "nominal_grams" <> ${row.nominalGrams} LIMIT 1`;
  if (other === undefined) return;
  throw new Refusal('gtin-of-other-content', { gtin: row.gtin, format: other.code, grams: other.nominalGrams });
}

function columnsOf(form: AddPackFormatForm) {
  return {
    code: form.code,
    name: form.name,
    nominalGrams: form.nominalGrams,
    assumedLowerMilligrams: form.assumedLowerMilligrams,
    assumedUpperMilligrams: form.assumedUpperMilligrams,
    packTareGrams: form.packTareGrams,
    packsPerPallet: form.packsPerPallet,
    palletTareGrams: form.palletTareGrams,
    codePattern: form.codePattern,
    bestBeforeMonths: form.bestBeforeMonths ?? null,
  };
}
