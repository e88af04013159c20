import { Inject, Injectable } from '@nestjs/common';
import type { Asked } from '../../journal/entry-draft.js';
import { RecordChange } from '../../journal/record-change.js';
import { clearPoints, raisePoint } from '../../open-points/raise-point.js';
import { countsOf } from '../../packing/packing-runs.js';
import { Clock, millisecondsBetween, type Instant } from '../../platform/clock.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { Ids } from '../../platform/ids.js';
import { findSilence, lastWeightAt, runsToLookAt, type FoundSilence } from './find-silence.js';
import { measureSilence } from './measure-silence.js';
import { watchedWeighers, type WatchedWeigher } from './silence-settings.js';
import { silencesToLookAt, type SilenceRow } from './silences.js';
import { WeigherSilence } from './weigher-silence.entity.js';

const minute = 60_000;
export const silenceCause = 'weigher-silent';

/** Finds weighers that have fallen silent, and silences whose weights have come. */
@Injectable()
export class WatchSilences {
  private readonly nextId = (): string => this.ids.next();

  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly changes: RecordChange,
    private readonly clock: Clock,
    private readonly ids: Ids,
  ) {}

  /** Records nothing where all is as it was. */
  async look(): Promise<void> {
    const now = this.clock.now();
    const weighers = await watchedWeighers(this.reader);
    const known = await silencesToLookAt(this.reader);
    for (const silence of known) {
      await this.lookAgain(silence, weighers.find(({ id }) => id === silence.weigherId) ?? null, now);
    }
    for (const weigher of weighers) {
      const lasting = (runId: string): boolean =>
        known.some((one) => one.weigherId === weigher.id && one.runId === runId && one.untilAt === null);
      for (const run of await runsToLookAt(this.reader, weigher.lineId, now)) {
        if (lasting(run.id)) continue;
        const found = await findSilence(this.reader, { weigher, run, now });
        if (found !== null) await this.begin(weigher, found);
      }
    }
  }

  private async begin(weigher: WatchedWeigher, { run, sinceAt, unverifiedPackCount }: FoundSilence): Promise<void> {
    const { siteId } = weigher;
    await this.changes.run(asTheHouse(siteId), {}, async (tx, { recordedAt: at }) => {
      const id = this.nextId();
      const silence = { weigherId: weigher.id, runId: run.id, sinceAt };
      await tx.insert(WeigherSilence, { id, ...silence, untilAt: null, foundAt: at });
      const subject = { kind: 'weigher-silence', id };
      const facts = {
        line: weigher.lineCode,
        weigher: weigher.code,
        run: run.number,
        at: sinceAt,
        count: unverifiedPackCount,
      };
      await raisePoint(tx, { id: this.nextId(), siteId, cause: silenceCause, facts, subject, role: 'line-lead', at });
      return { answer: null, entry: entryOf(id, run.id, { ...silence, untilAt: null, unverifiedPackCount }) };
    });
  }

  private async lookAgain(silence: SilenceRow, weigher: WatchedWeigher | null, now: Instant): Promise<void> {
    const { runId, sinceAt } = silence;
    const counts = await countsOf(this.reader, [runId]);
    const lastAt = await lastWeightAt(this.reader, runId, silence.weigherId);
    const endedAt = silence.untilAt ?? endOf(silence, { weigher, lastAt, now });
    const known = { runId, counts };
    const { isVerified, unverifiedPackCount } = await measureSilence(this.reader, known, {
      ...silence,
      untilAt: endedAt,
    });
    const speaks = lastAt !== null && lastAt > sinceAt;
    const hasCome = isVerified && (speaks || endedAt !== null);
    const untilAt = endedAt ?? (hasCome ? lastAt : null);
    if (untilAt === silence.untilAt && !hasCome) return;
    await this.end({ ...silence, untilAt }, { hasCome, unverifiedPackCount });
  }

  private async end(
    { id, siteId, runId, untilAt }: SilenceRow,
    { hasCome, unverifiedPackCount }: { readonly hasCome: boolean; readonly unverifiedPackCount: number },
  ): Promise<void> {
    await this.changes.run(asTheHouse(siteId), {}, async (tx, { recordedAt: at }) => {
      await tx.update(WeigherSilence, { id }, { untilAt });
      const subject = { kind: 'weigher-silence', id };
      const cleared = { nextId: this.nextId, siteId, cause: silenceCause, subject, personId: null, at };
      if (hasCome) await clearPoints(tx, cleared);
      return { answer: null, entry: entryOf(id, runId, { untilAt, hasCome, unverifiedPackCount }) };
    });
  }
}

/** When weights flow again, the run is closed or nobody waits for the weigher any more; null while it lasts. */
function endOf(
  { sinceAt, runClosedAt }: SilenceRow,
  known: { readonly weigher: WatchedWeigher | null; readonly lastAt: Instant | null; readonly now: Instant },
): Instant | null {
  const { weigher, lastAt, now } = known;
  const waits = weigher?.silentAfterMinutes ?? null;
  if (waits === null) return now;
  const flows = lastAt !== null && lastAt > sinceAt && millisecondsBetween(lastAt, now) < waits * minute;
  return flows ? lastAt : runClosedAt;
}

function entryOf(id: string, runId: string, after: Record<string, string | number | boolean | null>) {
  return {
    action: 'look-at-weighing',
    subject: { kind: 'weigher-silence', id },
    touches: [{ kind: 'packing-run', id: runId }],
    after,
  } as const;
}

function asTheHouse(siteId: string): Asked {
  return { actor: { siteId, personId: null, deviceId: null, roles: [] }, route: 'HOUSE', key: null };
}
