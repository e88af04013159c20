import { Inject, Injectable } from '@nestjs/common';
import { formatKilograms } from '../core/units/grams.js';
import { bagsOf } from '../drying/bulk-bags.js';
import type { Asked, Subject } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { openPointIdOf } from '../open-points/open-points.js';
import { clearPoints, raisePoint } from '../open-points/raise-point.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { Ids } from '../platform/ids.js';
import type { SentenceFacts } from '../platform/refusal.js';
import type { HopperPeriodFacts } from './hopper-periods.js';
import type { HopperLevel, PlacedFinding, PlacedSuspect } from './hopper-level.js';

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
  async bring(facts: HopperPeriodFacts, level: HopperLevel): Promise<void> {
    const { siteId, id } = facts.period;
    const subject = { kind: 'hopper-period', id };
    const [finding] = level.findings;
    const openId = await openPointIdOf(this.reader, { siteId, cause: levelCause, subject });
    if ((openId !== null) === (finding !== undefined)) return;
    if (finding === undefined) await this.clear(siteId, subject);
    else await this.raise(facts, { subject, finding, suspect: level.suspects[0] ?? null });
  }

  private async raise(
    facts: HopperPeriodFacts,
    found: { readonly subject: Subject; readonly finding: PlacedFinding; readonly suspect: PlacedSuspect | null },
  ): Promise<void> {
    const { siteId } = facts.period;
    const said = await this.factsOf(facts, found);
    await this.changes.run(asTheHouse(siteId), {}, async (tx, change) => {
      const { subject } = found;
      const point = { id: this.ids.next(), siteId, cause: levelCause, facts: said, subject, at: change.recordedAt };
      await raisePoint(tx, { ...point, role: 'line-lead' });
      const { kind, byGrams } = found.finding;
      const after = {
        finding: kind,
        byGrams,
        suspect: found.suspect?.kind ?? null,
        suspectId: found.suspect?.id ?? null,
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
    facts: HopperPeriodFacts,
    { finding, suspect }: { readonly finding: PlacedFinding; readonly suspect: PlacedSuspect | null },
  ): Promise<SentenceFacts> {
    const since = (at: string | null): string => at ?? 'the-start';
    return {
      hopper: facts.hopper.code,
      period: facts.period.number,
      at: since(finding.at),
      kilograms: formatKilograms(finding.byGrams, { thousands: true }),
      what: finding.kind,
      best: suspect?.kind ?? 'none',
      ...(suspect === null
        ? {}
        : {
            bag: await this.bagOfTip(facts, suspect.id),
            mass: formatKilograms(suspect.grams, { thousands: true }),
            after: since(suspect.afterAt),
            by: since(suspect.byAt),
          }),
    };
  }

  private async bagOfTip(facts: HopperPeriodFacts, tipId: string | null): Promise<string> {
    const [bagId] = facts.additions.find(({ id }) => id === tipId)?.bagIds ?? [];
    const [bag] = bagId === undefined ? [] : await bagsOf(this.reader, [bagId]);
    return bag?.number ?? 'not-named';
  }
}

/** What the house itself asks for: no person, no device, no key. */
function asTheHouse(siteId: string): Asked {
  return { actor: { siteId, personId: null, deviceId: null, roles: [] }, route: 'HOUSE', key: null };
}
