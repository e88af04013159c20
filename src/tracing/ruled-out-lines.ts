import type { RuledOutInPeriod } from '../hopper/hopper-links.js';
import type { ModelUsed } from '../hopper/model-used.js';
import { inChunks } from '../platform/database/in-chunks.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { RuledOutLine } from './thread.js';

const reasons = ['tipped-later', 'left-before'] as const;

/** What is ruled out, by hopper period and reason, bags by their numbers. */
export async function ruledOutLines(
  from: ReadFrom,
  periods: readonly RuledOutInPeriod[],
  models: readonly ModelUsed[],
): Promise<readonly RuledOutLine[]> {
  const numbers = await bagNumbers(
    from,
    periods.flatMap(({ bags }) => (bags ?? []).map(({ bagId }) => bagId)),
  );
  return periods.flatMap(({ periodId, bags }): RuledOutLine[] => {
    const known = models.find((model) => model.periodId === periodId);
    if (known === undefined) return [];
    const { hopperId, hopperCode, periodNumber } = known;
    const where = { hopperId, hopperCode, periodId, periodNumber };
    if (bags === null) {
      const none = { bagNumbers: [], firstTippedAt: null, lastTippedAt: null };
      return [{ ...where, reason: 'records-impossible', ...none }];
    }
    return reasons.flatMap((reason): RuledOutLine[] => {
      const own = bags.filter((bag) => bag.reason === reason);
      if (own.length === 0) return [];
      const bagNumbers = own.map(({ bagId }) => numbers.get(bagId) ?? bagId);
      const [first, last] = [own.at(0), own.at(-1)];
      return [
        { ...where, reason, bagNumbers, firstTippedAt: first?.tippedAt ?? null, lastTippedAt: last?.tippedAt ?? null },
      ];
    });
  });
}

async function bagNumbers(from: ReadFrom, bagIds: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const rows = await inChunks(
    bagIds,
    (chunk) => from.sql<{ id: string; number: string }>`
      SELECT "id", "number" FROM "bulk_bag" WHERE "id" IN (${() => chunk})`,
  );
  return new Map(rows.map(({ id, number }) => [id, number]));
}
