import type { NarrowingRow, PartRow } from '../../disposition/narrowings.js';
import { bagsOf } from '../../drying/bulk-bags.js';
import { lotOf, runOf } from '../../packing/packing-runs.js';
import { palletsOf } from '../../pallets/pallet-list.js';
import type { ReadFrom } from '../../platform/database/reading.js';

/** A part as people know it. */
export interface PartLine {
  readonly kind: PartRow['unitKind'];
  readonly name: string;
  readonly fromAt: string | null;
  readonly untilAt: string | null;
}

/** A narrowing as it is shown. */
export interface NarrowingLine extends Pick<NarrowingRow, 'id' | 'hazard' | 'reason' | 'assessment' | 'narrowedAt'> {
  /** Null: by nobody who is known by name. */
  readonly by: string | null;
  readonly parts: readonly PartLine[];
}

/** Narrowings with the names of their parts and of who signed. */
export async function narrowedLines(
  from: ReadFrom,
  narrowings: readonly NarrowingRow[],
  people: ReadonlyMap<string, string>,
): Promise<readonly NarrowingLine[]> {
  const parts = narrowings.flatMap((narrowing) => narrowing.parts);
  const names = await namesOfParts(from, parts);
  return narrowings.map(({ id, hazard, reason, assessment, narrowedAt, personId, parts: own }) => ({
    ...{ id, hazard, reason, assessment, narrowedAt },
    by: personId === null ? null : (people.get(personId) ?? null),
    parts: own.map(({ unitKind: kind, unitId, fromAt, untilAt }) => {
      return { kind, name: names.get(unitId) ?? unitId, fromAt, untilAt };
    }),
  }));
}

async function namesOfParts(from: ReadFrom, parts: readonly PartRow[]): Promise<ReadonlyMap<string, string>> {
  const idsOf = (kind: PartRow['unitKind']): readonly string[] =>
    parts.flatMap(({ unitKind, unitId }) => (unitKind === kind ? [unitId] : []));
  const names = new Map<string, string>();
  for (const { id, sscc } of await palletsOf(from, idsOf('pallet'))) names.set(id, sscc);
  for (const { id, number } of await bagsOf(from, idsOf('bulk-bag'))) names.set(id, number);
  for (const id of idsOf('lot')) names.set(id, (await lotOf(from, id)).code);
  for (const id of idsOf('packing-run')) names.set(id, (await runOf(from, id)).number);
  return names;
}
