import type { OrderLineForm } from '../../dispatch/delivery.form.js';
import { BadForm, type FieldProblem } from '../../platform/refusal.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { planLines, type PlanPageForm } from './dispatch.form.js';

/** What may be ordered: packs of a format, or whole bags of a grade. */
export interface Goods {
  readonly id: string;
  readonly kind: 'pack-format' | 'grade';
  readonly name: string;
  readonly packsPerPallet: number | null;
}

export async function goodsOf(from: ReadFrom, siteId: string): Promise<readonly Goods[]> {
  const formats = await from.sql<{ id: string; name: string; packsPerPallet: number }>`
    SELECT "id", "name", "packs_per_pallet" AS "packsPerPallet" FROM "pack_format" WHERE "site_id" = ${siteId}
    ORDER BY "name"`;
  const grades = await from.sql<{ id: string; name: string }>`
    SELECT "id", "name" FROM "grade" WHERE "site_id" = ${siteId} ORDER BY "name"`;
  return [
    ...formats.map((format) => ({ ...format, kind: 'pack-format' as const })),
    ...grades.map((grade) => ({ ...grade, kind: 'grade' as const, packsPerPallet: null })),
  ];
}

/** @throws {BadForm} where a row has goods without a count or the other way round, and where there is none */
export function linesOfPlan(form: PlanPageForm, goods: readonly Goods[]): OrderLineForm[] {
  const problems: FieldProblem[] = [];
  const lines = planLines.flatMap((place): OrderLineForm[] => {
    const id = form[`goods${place}`] ?? null;
    const orderedCount = form[`count${place}`] ?? null;
    if (id === null && orderedCount === null) return [];
    if (id === null) problems.push({ field: `goods${place}`, code: 'field-missing', facts: {} });
    if (orderedCount === null) problems.push({ field: `count${place}`, code: 'field-missing', facts: {} });
    if (id === null || orderedCount === null) return [];
    const isFormat = goods.find((one) => one.id === id)?.kind !== 'grade';
    return [isFormat ? { formatId: id, orderedCount } : { gradeId: id, orderedCount }];
  });
  if (lines.length === 0 && problems.length === 0) problems.push({ field: 'goods1', code: 'field-missing', facts: {} });
  if (problems.length > 0) throw new BadForm(problems);
  return lines;
}
