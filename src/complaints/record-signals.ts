import { changeCounts } from '../disposition/changes-to-look-at.js';
import { holdsEverOn } from '../disposition/holds.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { Signal, SignalsAsked } from './signal.js';

/** So many of the latest bags are what is usual for bags. Our own choice. */
const latestBags = 200;

/** Late entries and corrections about the runs and the bags, and holds that were ever placed on them. */
export async function recordSignals(from: ReadFrom, asked: SignalsAsked): Promise<readonly Signal[]> {
  const { siteId, thread, window, periodFromAt } = asked;
  const otherBags = await from.sql<{ id: string }>`
    SELECT "id" FROM "bulk_bag" WHERE "site_id" = ${siteId} AND "voided_by" IS NULL
      AND "fill_started_at" >= ${periodFromAt} AND "fill_started_at" <= ${window.untilAt}
    ORDER BY "id" DESC LIMIT ${latestBags}`;
  const runs = new Map(thread.packed.map(({ runId, runNumber }) => [runId, runNumber]));
  const bags = new Map(
    thread.sources.filter(({ word }) => word !== 'possible').map(({ bagId, bagNumber }) => [bagId, bagNumber]),
  );
  const groups = [
    { kind: 'run', named: runs, others: asked.runs.map(({ id }) => id), href: (id: string) => `/runs/${id}` },
    { kind: 'bag', named: bags, others: otherBags.map(({ id }) => id), href: (id: string) => `/thread?code=${id}` },
  ] as const;
  const signals: Signal[] = [];
  for (const { kind, named, others, href } of groups) {
    const ids = [...new Set([...named.keys(), ...others])];
    const counts = [
      { what: 'changes', unit: 'times', of: await changeCounts(from, siteId, ids) },
      { what: 'holds', unit: 'holds', of: await holdCounts(from, ids) },
    ];
    for (const { what, unit, of } of counts) {
      const reference = others.map((id) => of.get(id) ?? 0);
      for (const [id, name] of named) {
        const value = of.get(id) ?? 0;
        const facts = { name };
        signals.push({
          code: `stand-out-${what}-${kind}`,
          facts,
          unit,
          href: href(id),
          value,
          reference,
          tail: 'upper',
        });
      }
    }
  }
  return signals;
}

async function holdCounts(from: ReadFrom, ids: readonly string[]): Promise<ReadonlyMap<string, number>> {
  const counts = new Map<string, number>();
  for (const { scopeId } of await holdsEverOn(from, ids)) counts.set(scopeId, (counts.get(scopeId) ?? 0) + 1);
  return counts;
}
