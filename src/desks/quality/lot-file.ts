import { changesAbout } from '../../disposition/changes-to-look-at.js';
import { decisionsOf, type DecisionLine } from '../../disposition/decisions.js';
import { openHolds, type HoldScope } from '../../disposition/standings.js';
import { stateWord, worstState, type StateWord } from '../../disposition/worst-state.js';
import { bagsOf } from '../../drying/bulk-bags.js';
import { meanNetsOf } from '../../fill-weight/mean-nets.js';
import { lastSequenceOf } from '../../journal/stale-page.js';
import type { LotRow } from '../../packing/packing-run-rows.js';
import { rangesOfLot, runOf } from '../../packing/packing-runs.js';
import { readLotOfSite } from '../../packing/run-lists.js';
import type { Actor } from '../../platform/actor.js';
import type { Instant } from '../../platform/clock.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { readThread } from '../../tracing/read-thread.js';
import { subjectById } from '../../tracing/subject-by-id.js';
import type { PalletLine, Thread } from '../../tracing/thread.js';
import { lacksOfLot } from './lot-lacks.js';
import { lacksOfHolds } from './bag-file.js';
import { lacksOfChanges, type Lack } from './file-parts.js';
import type { LotRun } from './lot-run.js';
import { secondPeopleOf, type SecondPerson } from './second-people.js';

/** All that quality looks at before deciding on a lot. */
export interface LotFile {
  readonly lot: LotRow;
  readonly state: StateWord;
  readonly runs: readonly LotRun[];
  readonly thread: Thread;
  /** The pallets that packs of the lot stand on, or may. */
  readonly pallets: readonly PalletLine[];
  readonly lacks: readonly Lack[];
  readonly decisions: readonly DecisionLine[];
  readonly seconds: readonly SecondPerson[];
  readonly sequence: number;
}

/** @throws {NotFound} `lot` */
export async function readLotFile(from: ReadFrom, actor: Actor, lotId: string, now: Instant): Promise<LotFile> {
  const { siteId } = actor;
  const lot = await readLotOfSite(from, siteId, lotId);
  const thread = await readThread(from, siteId, await subjectById(from, 'lot', lot.id), now);
  const runs = await runsOfLot(from, lot.id);
  const pallets = thread.pallets.filter(({ isSubject }) => isSubject);
  const decisions = await decisionsOf(from, 'lot', lot.id);
  const holds = await openHolds(from, scopesOf(lot, runs, pallets));
  const changes = await changesAbout(from, siteId, [
    ...[lot.id, ...runs.map(({ run }) => run.id)],
    ...thread.sources.filter(({ word }) => word !== 'possible').map(({ bagId }) => bagId),
  ]);
  const bags = await bagsOf(
    from,
    thread.sources.map(({ bagId }) => bagId),
  );
  const lacks = await lacksOfLot(from, { runs, thread, bags });
  return {
    ...{ lot, runs, thread, pallets, decisions },
    state: stateOf(thread, decisions, holds.length > 0),
    lacks: [...(await lacksOfHolds(from, holds)), ...lacks, ...lacksOfChanges(changes)],
    seconds: await secondPeopleOf(from, actor),
    sequence: await lastSequenceOf(from, { kind: 'lot', id: lot.id }),
  };
}

async function runsOfLot(from: ReadFrom, lotId: string): Promise<readonly LotRun[]> {
  const ranges = await rangesOfLot(from, lotId);
  const means = await meanNetsOf(from, [...new Set(ranges.map(({ runId }) => runId))]);
  const runs: LotRun[] = [];
  for (const range of ranges) {
    runs.push({ run: await runOf(from, range.runId), range, mean: means.get(range.runId) ?? null });
  }
  return runs;
}

function scopesOf(lot: LotRow, runs: readonly LotRun[], pallets: readonly PalletLine[]): readonly HoldScope[] {
  return [
    { kind: 'lot', id: lot.id },
    ...runs.map(({ run }): HoldScope => ({ kind: 'packing-run', id: run.id })),
    ...pallets.map(({ palletId }): HoldScope => ({ kind: 'pallet', id: palletId })),
  ];
}

/** Without a decision of its own a lot follows its bags; a hold on it or on a part of it stops it. */
function stateOf(thread: Thread, decisions: readonly DecisionLine[], isOnHold: boolean): StateWord {
  const [standing] = decisions;
  if (standing !== undefined) return stateWord(standing.verdict, isOnHold);
  const ofBags = thread.sources.map(({ decision, isOnHold: isHeld }) =>
    stateWord(decision as StateWord & ('waiting' | 'released' | 'rejected' | 'concession'), isHeld),
  );
  return stateWord(worstVerdict(ofBags), isOnHold);
}

function worstVerdict(words: readonly StateWord[]): 'waiting' | 'released' | 'rejected' | 'concession' {
  const worst = words.length === 0 ? 'waiting' : worstState(words);
  return worst === 'on-hold' ? 'waiting' : worst;
}
