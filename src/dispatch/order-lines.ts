import type { ReadFrom } from '../platform/database/reading.js';
import { BadForm, NotFound, Refusal, type FieldProblem } from '../platform/refusal.js';
import { formatOf, gradeOf } from '../plant/plant-facts.js';
import type { OrderLineForm } from './delivery.form.js';

/**
 * Each line is of one kind, of goods of the site, and no goods are named twice: what is loaded is counted against one line.
 *
 * @throws {BadForm} `format-or-grade`
 * @throws {Refusal} `line-named-twice`
 * @throws {NotFound} `pack-format`, `grade`
 */
export async function refuseOddLines(from: ReadFrom, siteId: string, lines: readonly OrderLineForm[]): Promise<void> {
  const problems = lines.flatMap(({ formatId = null, gradeId = null }, place): readonly FieldProblem[] =>
    (formatId === null) === (gradeId === null)
      ? [{ field: `lines.${place}.formatId`, code: 'format-or-grade', facts: {} }]
      : [],
  );
  if (problems.length > 0) throw new BadForm(problems);
  const goods = lines.map((line) => line.formatId ?? line.gradeId);
  const twice = goods.findIndex((id, place) => goods.indexOf(id) !== place);
  if (twice >= 0) throw new Refusal('line-named-twice', { line: twice + 1 });
  for (const line of lines) await refuseUnknownGoods(from, siteId, line);
}

async function refuseUnknownGoods(from: ReadFrom, siteId: string, line: OrderLineForm): Promise<void> {
  const [kind, id] = line.formatId
    ? (['pack-format', line.formatId] as const)
    : (['grade', line.gradeId ?? ''] as const);
  const goods = kind === 'pack-format' ? await formatOf(from, id) : await gradeOf(from, id);
  if (goods.siteId !== siteId) throw new NotFound(kind, id);
}
