import { changesAbout, type ChangeLine } from '../disposition/changes-to-look-at.js';
import { weightsAround, type WeightsAround } from '../fill-weight/weights-around.js';
import { checksOfLineBetween } from '../line-checks/line-checks.js';
import { runOf, stopsOf } from '../packing/packing-runs.js';
import { shifted, type Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { groupBy } from '../platform/group-by.js';
import type { Thread } from './thread.js';

/** Near the minutes of some packs: so long before and after. Our own choice. */
const nearMilliseconds = 30 * 60_000;

/** A stop or a check within, shortly before or shortly after the minutes in which the packs were packed. */
export interface NearEvent {
  readonly kind: 'stop' | 'check';
  readonly at: Instant;
  readonly lineCode: string;
  /** The reason of a stop; the station of a check. */
  readonly says: string;
  /** Of a check. */
  readonly passed: boolean | null;
  readonly href: string;
}

/** Packs that share sugar with those asked for, by how surely. */
export interface SisterPacks {
  readonly word: 'sure' | 'likely' | 'possible';
  readonly palletCount: number;
  readonly packCount: number;
}

/** What the records show around some packs besides where they came from and went. */
export interface Dossier {
  readonly near: readonly NearEvent[];
  /** What weighers weighed in the minutes of the packs, within half an hour of them and over the run; none weighed: none. */
  readonly weights: readonly DossierWeights[];
  /** Corrections and late entries of the runs, and of the bags that are surely or likely in the packs; the latest first. */
  readonly changes: readonly ChangeLine[];
  readonly sisters: readonly SisterPacks[];
}

export interface DossierWeights extends WeightsAround {
  readonly runNumber: string;
  readonly lineCode: string;
}

/** Null of what was never packed or counted, and of bags. */
export async function dossierOf(
  from: ReadFrom,
  siteId: string,
  thread: Pick<Thread, 'packed' | 'sources' | 'pallets'>,
): Promise<Dossier | null> {
  const { packed, sources } = thread;
  if (packed.length === 0) return null;
  const bags = sources.filter(({ word }) => word !== 'possible');
  return {
    near: await nearEvents(from, packed),
    weights: await weightsOf(from, packed),
    changes: await changesAbout(from, siteId, [
      ...new Set([...packed.map(({ runId }) => runId), ...bags.map(({ bagId }) => bagId)]),
    ]),
    sisters: sistersOf(thread.pallets),
  };
}

async function nearEvents(from: ReadFrom, packed: Thread['packed']): Promise<readonly NearEvent[]> {
  const events = new Map<string, NearEvent>();
  for (const { runId, lineCode, when } of packed) {
    if (when === null) continue;
    const [fromAt, untilAt] = [shifted(when.fromAt, -nearMilliseconds), shifted(when.untilAt, nearMilliseconds)];
    for (const { id, stoppedAt, reason } of await stopsOf(from, [runId])) {
      if (stoppedAt < fromAt || stoppedAt > untilAt) continue;
      const href = `/runs/${runId}`;
      events.set(id, { kind: 'stop', at: stoppedAt, lineCode, says: reason, passed: null, href });
    }
    const { lineId } = await runOf(from, runId);
    for (const { id, occurredAt, station, passed } of await checksOfLineBetween(from, lineId, fromAt, untilAt)) {
      events.set(id, { kind: 'check', at: occurredAt, lineCode, says: station, passed, href: `/checks/${id}` });
    }
  }
  return [...events.values()].sort((one, other) => (one.at < other.at ? -1 : 1));
}

/** Where packs of a run bear several codes or stand on several pallets, from the first of their minutes to the last. */
async function weightsOf(from: ReadFrom, packed: Thread['packed']): Promise<readonly DossierWeights[]> {
  const found: DossierWeights[] = [];
  for (const [runId, parts] of groupBy(packed, (part) => part.runId)) {
    const [fromAt] = parts.flatMap(({ when }) => when?.fromAt ?? []).sort();
    const untilAt = parts
      .flatMap(({ when }) => when?.untilAt ?? [])
      .sort()
      .at(-1);
    const [part] = parts;
    if (fromAt === undefined || untilAt === undefined || part === undefined) continue;
    const { runNumber, lineCode } = part;
    const weighed = await weightsAround(from, { runId, minutes: { fromAt, untilAt }, nearMilliseconds });
    found.push(...weighed.map((weights) => ({ ...weights, runNumber, lineCode })));
  }
  return found;
}

function sistersOf(pallets: Thread['pallets']): readonly SisterPacks[] {
  return (['sure', 'likely', 'possible'] as const).flatMap((word) => {
    const own = pallets.filter((pallet) => pallet.word === word && !pallet.isSubject);
    const packCount = own.reduce((sum, pallet) => sum + pallet.packCount, 0);
    return own.length === 0 ? [] : [{ word, palletCount: own.length, packCount }];
  });
}
