import { Injectable, type OnModuleInit } from '@nestjs/common';
import { openHoldsOfSite } from '../disposition/holds.js';
import { openHolds, type HoldRow } from '../disposition/standings.js';
import { RecordChange } from '../journal/record-change.js';
import { clearPoints, raisePoint } from '../open-points/raise-point.js';
import { reachJobKind, type ReachLook } from '../open-points/reach-job.js';
import { HeavyReads } from '../platform/database/heavy-reads.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { Ids } from '../platform/ids.js';
import { JobRunner } from '../platform/jobs/job-runner.js';
import { waitingJobs } from '../platform/jobs/waiting-jobs.js';
import { reachedOnTheWay, type ReachedOnTheWay } from './reached-on-the-way.js';

const cause = 'held-after-leaving';
const mostHolds = 10_000;

/**
 * After what had happened was recorded otherwise (a late tip, a void one, an empty, a corrected count): a point for
 * quality on each pallet or bag on a vehicle or with a customer that an open hold did not reach before and does now. A
 * look after the hold itself was changed only remembers what it reaches: who changed it has seen that. Until that look
 * was taken, no other one is told of the hold.
 */
@Injectable()
export class WatchReach implements OnModuleInit {
  constructor(
    private readonly jobs: JobRunner,
    private readonly changes: RecordChange,
    private readonly heavy: HeavyReads,
    private readonly ids: Ids,
  ) {}

  onModuleInit(): void {
    this.jobs.handle(reachJobKind, (payload) => this.look(payload as ReachLook));
  }

  /** May run again: what was remembered is not pointed at twice, and then nothing is recorded. */
  async look({ siteId, holdId }: ReachLook): Promise<void> {
    const looked = await this.heavy.patientSnapshot(async (from) => {
      const untold = holdId === null ? await changedHolds(from, siteId) : new Set<string>();
      const isMeant = ({ id }: HoldRow): boolean => (holdId === null ? !untold.has(id) : id === holdId);
      const holds = (await openHoldRows(from, siteId)).filter(isMeant);
      const found: { readonly hold: HoldRow; readonly units: readonly ReachedOnTheWay[] }[] = [];
      for (const hold of holds) found.push({ hold, units: await reachedOnTheWay(from, hold) });
      return found;
    });
    for (const { hold, units } of looked) await this.bring(siteId, hold, { units, isTold: holdId !== null });
  }

  private async bring(
    siteId: string,
    hold: HoldRow,
    { units, isTold }: { readonly units: readonly ReachedOnTheWay[]; readonly isTold: boolean },
  ): Promise<void> {
    const actor = { siteId, personId: null, deviceId: null, roles: [] };
    const known = await this.heavy.patientSnapshot((from) => remembered(from, hold.id));
    const added = units.filter(({ id }) => !known.has(id));
    const gone = [...known].filter((id) => !units.some((unit) => unit.id === id));
    if (added.length + gone.length === 0) return;
    await this.changes.run({ actor, route: `job ${reachJobKind}`, key: null }, {}, async (tx, change) => {
      const about = { siteId, cause, at: change.recordedAt };
      const subjectOf = (unitId: string) => ({ kind: 'held-unit', id: `${hold.id}.${unitId}` });
      for (const { id, unit, customer, delivery } of isTold ? [] : added) {
        const facts = { hold: hold.number, unit, customer, delivery };
        const draft = { ...about, id: this.ids.next(), facts, subject: subjectOf(id) };
        await raisePoint(tx, { ...draft, role: 'quality-officer' });
      }
      for (const id of gone) {
        await clearPoints(tx, { ...about, nextId: () => this.ids.next(), subject: subjectOf(id), personId: null });
      }
      return {
        answer: null,
        entry: {
          action: 'watch-hold-reach',
          subject: { kind: 'hold', id: hold.id },
          touches: added.map(({ kind, id }) => ({ kind, id })),
          after: { reached: added.map(({ id }) => id), ended: gone },
        },
      };
    });
  }
}

async function openHoldRows(from: ReadFrom, siteId: string): Promise<readonly HoldRow[]> {
  const lines = await openHoldsOfSite(from, siteId, mostHolds);
  const ids = new Set(lines.map(({ id }) => id));
  const scopes = lines.map(({ scopeKind: kind, scopeId: id }) => ({ kind, id }));
  return (await openHolds(from, scopes)).filter(({ id }) => ids.has(id));
}

/** Holds that were changed and whose own look is still to come. */
async function changedHolds(from: ReadFrom, siteId: string): Promise<ReadonlySet<string>> {
  const waiting = await waitingJobs(from, reachJobKind);
  const looks = waiting.map((payload) => JSON.parse(payload) as ReachLook);
  return new Set(looks.flatMap(({ siteId: of, holdId }) => (of === siteId && holdId !== null ? [holdId] : [])));
}

/** What a hold reached on vehicles and at customers when it was last looked at: the journal's entries, one after the other. */
async function remembered(from: ReadFrom, holdId: string): Promise<ReadonlySet<string>> {
  const rows = await from.sql<{ after: string }>`
    SELECT "after" FROM "journal_entry"
    WHERE "subject_kind" = 'hold' AND "subject_id" = ${holdId} AND "action" = 'watch-hold-reach' ORDER BY "sequence"`;
  const known = new Set<string>();
  for (const { after } of rows) {
    const { reached, ended } = JSON.parse(after) as { readonly reached: string[]; readonly ended: string[] };
    for (const id of reached) known.add(id);
    for (const id of ended) known.delete(id);
  }
  return known;
}
