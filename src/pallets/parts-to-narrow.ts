import type { PartRow } from '../disposition/narrowings.js';
import { standingsOf, type HoldRow } from '../disposition/standings.js';
import { bagOf } from '../drying/bulk-bags.js';
import { lotOf, runOf } from '../packing/packing-runs.js';
import type { RunRange } from '../packing/run-ranges.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { NotFound, Refusal } from '../platform/refusal.js';
import { groundOf, isNothing } from './hold-ground.js';
import { narrowedOf, packsAsTarget, rangesOfPart } from './narrowed-holds.js';
import { palletOf, palletsOf } from './pallet-list.js';
import { readStandingFacts, targetOfPallet } from './standing-facts.js';

/** What is to be taken out of a hold. */
export interface WantedParts {
  readonly bagIds: readonly string[];
  readonly palletIds: readonly string[];
  readonly lotIds: readonly string[];
  /** Of a run, from a minute on up to before another. */
  readonly minutes: { readonly runId: string; readonly fromAt: string; readonly untilAt: string } | null;
}

type Part = Omit<PartRow, 'id'>;

/**
 * Parts of what a hold reaches, each with the ground that it is reached by now.
 *
 * @throws {Refusal} `part-not-reached`, `part-is-the-hold`, `no-pack-in-these-minutes`
 * @throws {NotFound} bulk-bag, pallet, lot, packing-run
 */
export async function partsToNarrow(
  from: ReadFrom,
  siteId: string,
  hold: HoldRow,
  wanted: WantedParts,
): Promise<readonly Part[]> {
  await refusePartsElsewhere(from, siteId, wanted);
  const parts: Part[] = [];
  for (const bagId of wanted.bagIds) parts.push(await bagPart(from, hold, bagId));
  parts.push(...(await palletParts(from, hold, wanted.palletIds)));
  for (const lotId of wanted.lotIds) {
    const { code } = await lotOf(from, lotId);
    parts.push(await packsPart(from, hold, { ...whole, unitKind: 'lot', unitId: lotId }, code));
  }
  if (wanted.minutes !== null) {
    const { runId: unitId, fromAt, untilAt } = wanted.minutes;
    const { number } = await runOf(from, unitId);
    parts.push(await packsPart(from, hold, { unitKind: 'packing-run', unitId, fromAt, untilAt }, number));
  }
  return parts;
}

/** What is another site's is not there. */
async function refusePartsElsewhere(from: ReadFrom, siteId: string, wanted: WantedParts): Promise<void> {
  const { bagIds, palletIds, lotIds, minutes } = wanted;
  const finders = [
    ...bagIds.map((id) => ({ kind: 'bulk-bag', id, find: bagOf })),
    ...palletIds.map((id) => ({ kind: 'pallet', id, find: palletOf })),
    ...lotIds.map((id) => ({ kind: 'lot', id, find: lotOf })),
    ...(minutes === null ? [] : [{ kind: 'packing-run', id: minutes.runId, find: runOf }]),
  ];
  for (const { kind, id, find } of finders) {
    if ((await find(from, id)).siteId !== siteId) throw new NotFound(kind, id);
  }
}

/** A bag is taken out of a hold on where it was dried; a hold on the bag itself is lifted. */
async function bagPart(from: ReadFrom, hold: HoldRow, bagId: string): Promise<Part> {
  const bag = await bagOf(from, bagId);
  refuseItself(hold, { kind: 'bulk-bag', id: bagId }, bag.number);
  const holds = (await standingsOf(from, [bag])).get(bagId)?.holds ?? [];
  if (!holds.some(({ id }) => id === hold.id)) throw notReached(hold, bag.number);
  return { ...whole, unitKind: 'bulk-bag', unitId: bagId, ground: { packs: [], bags: [] } };
}

async function palletParts(from: ReadFrom, hold: HoldRow, palletIds: readonly string[]): Promise<readonly Part[]> {
  if (palletIds.length === 0) return [];
  const known = await readStandingFacts(from, palletIds);
  const rows = new Map((await palletsOf(from, palletIds)).map((row) => [row.id, row]));
  return palletIds.map((palletId): Part => {
    const [facts, sscc] = [known.pallets.get(palletId), rows.get(palletId)?.sscc ?? palletId];
    refuseItself(hold, { kind: 'pallet', id: palletId }, sscc);
    if (facts === undefined) throw notReached(hold, sscc);
    const target = targetOfPallet(palletId, facts);
    const ground = groundOf(hold, target, known);
    if (isNothing(ground) || narrowedOf(hold, target, known) === 'out') throw notReached(hold, sscc);
    return { ...whole, unitKind: 'pallet', unitId: palletId, ground };
  });
}

async function packsPart(from: ReadFrom, hold: HoldRow, part: Omit<Part, 'ground'>, name: string): Promise<Part> {
  if (part.unitKind === 'lot') refuseItself(hold, { kind: 'lot', id: part.unitId }, name);
  const ranges = await closed(from, part);
  if (ranges.length === 0) throw new Refusal('no-pack-in-these-minutes', { unit: name });
  const target = await packsAsTarget(from, hold, ranges);
  const ground = groundOf(hold, target, target);
  if (isNothing(ground)) throw notReached(hold, name);
  // Where a hold follows sugar it reaches all packs that the sugar may be in: all of them are taken out.
  return { ...part, ground: { packs: ground.bags.length > 0 ? target.possible : ground.packs, bags: ground.bags } };
}

/** A lot that is still being packed is taken out as far as it was counted. */
async function closed(from: ReadFrom, part: Omit<Part, 'ground'>): Promise<readonly RunRange[]> {
  const ranges: RunRange[] = [];
  for (const { runId, fromCount, toCount } of await rangesOfPart(from, part)) {
    const end = toCount ?? (await runOf(from, runId)).packCount;
    if (fromCount < end) ranges.push({ runId, fromCount, toCount: end });
  }
  return ranges;
}

function refuseItself(hold: HoldRow, part: { readonly kind: string; readonly id: string }, unit: string): void {
  if (hold.scopeKind === part.kind && hold.scopeId === part.id) {
    throw new Refusal('part-is-the-hold', { hold: hold.number, unit });
  }
}

function notReached({ number }: HoldRow, unit: string): Refusal {
  return new Refusal('part-not-reached', { hold: number, unit });
}

const whole = { fromAt: null, untilAt: null } as const;
