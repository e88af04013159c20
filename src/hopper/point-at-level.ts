import { Inject, Injectable } from '@nestjs/common';
import { formatKilograms } from '../core/units/grams.js';
import type { Asked, Subject } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { openPointIdOf } from '../open-points/open-points.js';
import { clearPoints, raisePoint } from '../open-points/raise-point.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { Ids } from '../platform/ids.js';
import type { SentenceFacts } from '../platform/refusal.js';
import type { PeriodRow } from './hopper-period-rows.js';
import { timesText } from './level-text.js';
import { suspectTips } from './named-suspects.js';
import type { HopperLevel, PlacedFinding, PlacedSuspect } from './hopper-level.js';

/** A hopper period, and what its hopper is called. */
type LookedPeriod = Pick<PeriodRow, 'siteId' | 'id' | 'number'> & { readonly hopperCode: string };

export const levelCause = 'hopper-level-impossible';

/**
 * Brings the open point of a hopper period in line with its level: raised where the records cannot be true (when, by how
 * many kilograms, which single mistake fits best), cleared once they can.
 */
@Injectable()
export class PointAtLevel {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  /** Records nothing where the points say already what is so: a job may come twice. */
  async bring(period: LookedPeriod, level: HopperLevel): Promise<void> {
    const { siteId, id } = period;
    const subject = { kind: 'hopper-period', id };
    const [finding] = level.findings;
    const openId = await openPointIdOf(this.reader, { siteId, cause: levelCause, subject });
    if ((openId !== null) === (finding !== undefined)) return;
    if (finding === undefined) await this.clear(siteId, subject);
    else await this.raise(period, { subject, finding, level });
  }

  private async raise(
    period: LookedPeriod,
    found: { readonly subject: Subject; readonly finding: PlacedFinding; readonly level: HopperLevel },
  ): Promise<void> {
    const { siteId } = period;
    const said = await this.factsOf(period, found);
    await this.changes.run(asTheHouse(siteId), {}, async (tx, change) => {
      const { subject } = found;
      const point = { id: this.ids.next(), siteId, cause: levelCause, facts: said, subject, at: change.recordedAt };
      await raisePoint(tx, { ...point, role: 'line-lead' });
      const { kind, byGrams } = found.finding;
      const [best] = found.level.suspects;
      const after = {
        finding: kind,
        byGrams,
        suspect: best?.kind ?? null,
        suspectId: best?.id ?? null,
        tied: tiedWith(found.level).map(({ kind: also }) => also),
      };
      return { answer: null, entry: { action: 'question-hopper-level', subject, after } };
    });
  }

  private async clear(siteId: string, subject: Subject): Promise<void> {
    await this.changes.run(asTheHouse(siteId), {}, async (tx, change) => {
      const nextId = (): string => this.ids.next();
      await clearPoints(tx, { nextId, siteId, cause: levelCause, subject, personId: null, at: change.recordedAt });
      return { answer: null, entry: { action: 'clear-hopper-level', subject } };
    });
  }

  private async factsOf(
    period: LookedPeriod,
    { finding, level }: { readonly finding: PlacedFinding; readonly level: HopperLevel },
  ): Promise<SentenceFacts> {
    const since = (at: string | null): string => at ?? 'the-start';
    const [suspect] = level.suspects;
    return {
      hopper: period.hopperCode,
      period: period.number,
      at: since(finding.at),
      kilograms: formatKilograms(finding.byGrams, { thousands: true }),
      what: finding.kind,
      ...toldOf(level),
      ...(suspect === undefined
        ? {}
        : {
            bag: await this.bagOfSuspect(level, suspect),
            mass: formatKilograms(suspect.grams, { thousands: true }),
            after: since(suspect.afterAt),
            by: since(suspect.byAt),
          }),
    };
  }

  private async bagOfSuspect({ suspects }: HopperLevel, { id }: PlacedSuspect): Promise<string> {
    const tips = await suspectTips(this.reader, { suspects });
    return tips.find(({ tipId }) => tipId === id)?.bagNumber ?? 'not-named';
  }
}

/** Those that fit as well as the first, or too nearly as well to be told from it; without the first. */
function tiedWith({ suspects: [first, ...others] }: HopperLevel): readonly PlacedSuspect[] {
  return first?.isTied === true ? others.filter(({ isTied }) => isTied) : [];
}

/** Which mistake it would be, and how clearly it stands out. */
function toldOf(level: HopperLevel): SentenceFacts {
  const [first] = level.suspects;
  if (first === undefined) return { best: 'none' };
  if (!first.cures) return { best: first.kind };
  const tied = tiedWith(level);
  if (tied.length > 0) return { best: 'tied', first: first.kind, also: tied.map(({ kind }) => kind).join(', ') };
  if (level.timesBetter === null) return { best: 'alone', first: first.kind };
  return { best: 'led', first: first.kind, times: timesText(level.timesBetter) };
}

/** What the house itself asks for: no person, no device, no key. */
function asTheHouse(siteId: string): Asked {
  return { actor: { siteId, personId: null, deviceId: null, roles: [] }, route: 'HOUSE', key: null };
}
