import { findComplaint, subjectOfComplaint } from '../../complaints/complaints.js';
import { loadedUnitsOf } from '../../dispatch/deliveries.js';
import { findHold, type HoldLine } from '../../disposition/holds.js';
import { bagOf } from '../../drying/bulk-bags.js';
import { bagsOfLinerLot } from '../../drying/liner-lots.js';
import { linksByBag, sourcesOfRanges } from '../../hopper/hopper-links.js';
import { tipsOfPeriod } from '../../hopper/tips.js';
import { rangesOfLot } from '../../packing/packing-runs.js';
import { timesOfRange } from '../../packing/ranges-in-time.js';
import type { RunRange } from '../../packing/run-ranges.js';
import { contentsOf } from '../../pallets/pallet-list.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { shiftAt } from '../../plant/plant-facts.js';
import type { RecallScopeRow } from '../../recalls/recalls.js';
import { bagsOfDryerRun } from '../../tracing/hold-reach.js';
import { countsByRun } from '../../tracing/packed-parts.js';
import { subjectById } from '../../tracing/subject-by-id.js';
import { printedTimesOf, rangesOfSubject } from '../../tracing/subject-ranges.js';
import { threadKinds, type ThreadSubject } from '../../tracing/thread.js';

/** Something that a recall may be of, and whether it is meant unless somebody says otherwise. */
export interface ScopeChoice {
  readonly scope: RecallScopeRow;
  readonly isTicked: boolean;
}

/** More bags than these nobody chooses from one by one: the thread lists them all. */
const mostBags = 12;

/** A recall is of at most so many things. */
const mostScopes = 50;

/**
 * What a recall that begins with a thing may be of, the usual first and ticked: of packs the whole lot as printed
 * (the presumption of food law), of a bag the bag; then what is wider or narrower.
 */
export async function choicesOfSubject(
  from: ReadFrom,
  siteId: string,
  subject: ThreadSubject,
): Promise<readonly ScopeChoice[]> {
  const { kind, id } = subject;
  switch (kind) {
    case 'bulk-bag':
      return [ticked(whole('bulk-bag', id)), ...(await dryerShiftOf(from, siteId, id))];
    case 'liner-lot':
      return (await bagsOfLinerLot(from, siteId, id)).map((bagId) => ticked(whole('bulk-bag', bagId)));
    case 'packing-run':
      return [ticked(whole('packing-run', id)), ...(await bagsIn(from, siteId, subject))];
    case 'film-lot':
      return (await minutesOf(from, (await rangesOfSubject(from, siteId, subject)).possible)).map(ticked);
    case 'lot':
      return distinct([
        ticked(whole('lot', id)),
        ...(await printedTimesOf(from, siteId, subject)).map(({ runId, window }) =>
          open({ scopeKind: 'packing-run', scopeId: runId, ...window }),
        ),
        ...(await rangesOfLot(from, id)).map(({ runId }) => open(whole('packing-run', runId))),
        ...(await bagsIn(from, siteId, subject)),
      ]);
    case 'pallet':
      return distinct([...(await lotsOn(from, [id])), ...(await bagsIn(from, siteId, subject))]);
    case 'delivery': {
      const { palletIds, bagIds } = await loadedUnitsOf(from, id);
      return distinct([...(await lotsOn(from, palletIds)), ...bagIds.map((bagId) => ticked(whole('bulk-bag', bagId)))]);
    }
  }
}

/** @throws {NotFound} `hold` */
export async function choicesOfHold(from: ReadFrom, siteId: string, holdId: string): Promise<readonly ScopeChoice[]> {
  const hold = await findHold(from, siteId, holdId);
  if (hold.scopeKind === 'packing-run' && hold.fromCount !== null) return partOfRun(from, hold);
  const { scopeKind, scopeId, fromAt, untilAt } = hold;
  if (scopeKind === 'dryer-shift' || scopeKind === 'packing-shift') {
    return [ticked({ scopeKind, scopeId, fromAt, untilAt })];
  }
  if (scopeKind === 'packing-run' && fromAt !== null) {
    return [ticked({ scopeKind, scopeId, fromAt, untilAt }), open(whole(scopeKind, scopeId))];
  }
  const kind = threadKinds.find((known) => known === hold.scopeKind);
  if (kind !== undefined) return choicesOfSubject(from, siteId, await subjectById(from, kind, hold.scopeId));
  const isOfDryer = hold.scopeKind === 'dryer-run';
  const bagIds = isOfDryer ? await bagsOfDryerRun(from, hold.scopeId) : await bagsTippedIn(from, hold.scopeId);
  return distinct(bagIds.slice(0, mostScopes).map((bagId) => ticked(whole('bulk-bag', bagId))));
}

/** Nothing where it is not known what the complaint is about. @throws {NotFound} `complaint` */
export async function choicesOfComplaint(
  from: ReadFrom,
  siteId: string,
  complaintId: string,
): Promise<readonly ScopeChoice[]> {
  const subject = await subjectOfComplaint(from, await findComplaint(from, siteId, complaintId));
  return subject === null ? [] : choicesOfSubject(from, siteId, subject);
}

async function partOfRun(from: ReadFrom, { scopeId, fromCount, toCount }: HoldLine): Promise<readonly ScopeChoice[]> {
  const range = { runId: scopeId, fromCount: fromCount ?? 0, toCount: toCount ?? fromCount ?? 0 };
  return [...(await minutesOf(from, [range])).map(ticked), open(whole('packing-run', scopeId))];
}

/** The bags that went into a hopper period are what its hold covers. */
async function bagsTippedIn(from: ReadFrom, periodId: string): Promise<readonly string[]> {
  return (await tipsOfPeriod(from, periodId)).flatMap(({ bagId }) => bagId ?? []);
}

async function dryerShiftOf(from: ReadFrom, siteId: string, bagId: string): Promise<readonly ScopeChoice[]> {
  const { dryerId, filledAt } = await bagOf(from, bagId);
  if (dryerId === null || filledAt === null) return [];
  const { startsAt: fromAt, endsAt: untilAt } = await shiftAt(from, siteId, filledAt);
  return [open({ scopeKind: 'dryer-shift', scopeId: dryerId, fromAt, untilAt })];
}

async function lotsOn(from: ReadFrom, palletIds: readonly string[]): Promise<readonly ScopeChoice[]> {
  return (await contentsOf(from, palletIds)).map(({ lotId }) => ticked(whole('lot', lotId)));
}

/** Bags that are surely or likely in it: where the fault lies in the sugar, they are what reaches further. */
async function bagsIn(from: ReadFrom, siteId: string, subject: ThreadSubject): Promise<readonly ScopeChoice[]> {
  const { possible, certain } = await rangesOfSubject(from, siteId, subject);
  const found = linksByBag(await sourcesOfRanges(from, possible, { certain }));
  const inIt = [...found].filter(([, { word }]) => word === 'sure' || word === 'likely');
  return inIt.slice(0, mostBags).map(([bagId]) => open(whole('bulk-bag', bagId)));
}

/** The packs of ranges by the minutes in which they were packed: a recall of packs is kept by time. */
async function minutesOf(from: ReadFrom, ranges: readonly RunRange[]): Promise<readonly RecallScopeRow[]> {
  const counts = await countsByRun(from, ranges);
  return ranges.flatMap((range) => {
    const times = timesOfRange(range, counts.get(range.runId) ?? []);
    if (times === null || times.fromAt >= times.untilAt) return [whole('packing-run', range.runId)];
    return [{ scopeKind: 'packing-run' as const, scopeId: range.runId, ...times }];
  });
}

function whole(scopeKind: RecallScopeRow['scopeKind'], scopeId: string): RecallScopeRow {
  return { scopeKind, scopeId, fromAt: null, untilAt: null };
}

const ticked = (scope: RecallScopeRow): ScopeChoice => ({ scope, isTicked: true });
const open = (scope: RecallScopeRow): ScopeChoice => ({ scope, isTicked: false });

function distinct(choices: readonly ScopeChoice[]): readonly ScopeChoice[] {
  const first = new Map<string, ScopeChoice>();
  for (const choice of choices) {
    const { scopeKind, scopeId, fromAt } = choice.scope;
    const key = `${scopeKind} ${scopeId} ${fromAt ?? ''}`;
    if (!first.has(key)) first.set(key, choice);
  }
  return [...first.values()];
}
