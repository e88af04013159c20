import { Injectable } from '@nestjs/common';
import type { Specification, SpecificationLine } from '../core/sugar-analysis/specification.js';
import { compareDecimals, readDecimal } from '../core/units/decimals.js';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { canonicalText } from '../platform/canonical-text.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { GradeSpecification } from './grade-specification.entity.js';
import type { SetSpecificationForm, SpecificationLineForm } from './grade.form.js';
import { ofSite } from './of-site.js';
import { gradeOf } from './plant-facts.js';
import { insertVersion, settleRuleBeginning } from './valid-from.js';

/**
 * What a grade's results must be, from an instant on.
 * Refusals: `specification-line-twice`, `specification-limits-crossed`, `valid-from-not-later`,
 * `valid-from-in-the-past`.
 */
@Injectable()
export class SetSpecification {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: SetSpecificationForm): Promise<{ readonly id: string; readonly validFrom: string }> {
    return this.changes.run(asked, form, async (tx, change) => {
      const grade = ofSite(asked.actor, 'grade', await gradeOf(tx, form.gradeId));
      const specification = readSpecification(form.lines);
      const latest = await latestBeginning(tx, grade.id);
      const beginning = { validFrom: form.validFrom ?? null, reason: null, now: change.recordedAt, latest };
      const validFrom = settleRuleBeginning(beginning);
      const id = this.ids.next();
      const limits = canonicalText(specification.map((line) => ({ ...line })));
      await insertVersion(tx, GradeSpecification, { id, gradeId: grade.id, validFrom, limits });
      return {
        answer: { id, validFrom },
        entry: {
          action: 'set-specification',
          subject: { kind: 'grade', id: grade.id },
          after: { specificationId: id, validFrom, limits: specification.map((line) => ({ ...line })) },
        },
      };
    });
  }
}

/** @throws {Refusal} `specification-line-twice`, `specification-limits-crossed` */
export function readSpecification(lines: readonly SpecificationLineForm[]): Specification {
  const specification = lines.map(readLine);
  const twice = specification.find((line, place) => specification.findIndex((one) => isSame(one, line)) !== place);
  if (twice !== undefined) {
    throw new Refusal('specification-line-twice', { property: twice.property, method: twice.method });
  }
  return specification;
}

function readLine(line: SpecificationLineForm): SpecificationLine {
  const minimum = canonicalDecimal(line.minimum ?? null);
  const maximum = canonicalDecimal(line.maximum ?? null);
  if (minimum !== null && maximum !== null && compareDecimals(minimum, maximum) > 0) {
    throw new Refusal('specification-limits-crossed', { property: line.property, minimum, maximum });
  }
  return { property: line.property, method: line.method, required: line.required, minimum, maximum };
}

function canonicalDecimal(text: string | null): string | null {
  if (text === null) return null;
  const reading = readDecimal(text);
  if (!reading.ok) throw new RangeError(`the form let a decimal pass: ${text}`);
  return reading.decimal;
}

function isSame(one: SpecificationLine, other: SpecificationLine): boolean {
  return one.property === other.property && one.method === other.method;
}

async function latestBeginning(tx: Tx, gradeId: string): Promise<string | null> {
  const [last] = await tx.sql<{ validFrom: string }>`
    SELECT "valid_from" AS "validFrom" FROM "grade_specification"
    WHERE "grade_id" = ${gradeId} AND "voided_by" IS NULL ORDER BY "valid_from" DESC LIMIT 1`;
  return last?.validFrom ?? null;
}
