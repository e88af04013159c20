import { Inject, Injectable } from '@nestjs/common';
import type { Asked } from '../../journal/entry-draft.js';
import { RecordChange } from '../../journal/record-change.js';
import type { CheckAction } from '../../line-checks/check-words.js';
import { lineCheckOf } from '../../line-checks/line-checks.js';
import { recordCheck } from '../../line-checks/record-check.js';
import { canonicalText, sha256 } from '../../platform/canonical-text.js';
import { Clock, shifted, type Instant } from '../../platform/clock.js';
import { isTakenKey } from '../../platform/database/constraint-errors.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { Ids } from '../../platform/ids.js';
import { latenessLimits } from '../../platform/occurred-at.js';
import { BadForm, Refusal } from '../../platform/refusal.js';
import type { PackWeigherRow } from '../pack-weighers.js';
import { farthestReadings } from './farthest-readings.js';
import { planOfWeigher } from './plan-of-weigher.js';
import { WeigherCheck } from './weigher-check.entity.js';
import type { WeigherCheckForm } from './weigher-check.form.js';
import { knownWeigherCheck } from './weigher-checks.js';

export interface WeigherCheckAnswer {
  readonly checkId: string;
  readonly planId: string;
  readonly station: string;
  readonly sequence: number;
  readonly passed: boolean;
  /** What was done at once; null: nobody said. */
  readonly action: CheckAction | null;
  /** Of each test pack the reading that counts. */
  readonly results: readonly { readonly code: string; readonly passed: boolean; readonly readingMilligrams: number }[];
  /** It had been received before, and counts once. */
  readonly isRepeated: boolean;
}

interface Received {
  readonly weigher: PackWeigherRow;
  readonly form: WeigherCheckForm;
  readonly series: string;
  readonly digest: string;
  readonly at: Instant;
}

/**
 * A pack weigher sends the result of a check that it made with known test packs. It is a line check like one that a
 * person enters, passed or failed by the same rule: what the machine thinks of it is not asked. It has happened, so it
 * is recorded whatever else the plan asks for; what was done at once may be said with it, and is not asked for.
 * Refusals: `weigher-check-not-planned`, `weigher-check-which-plan`, `weigher-check-of-other`; as a bad form readings
 * that cannot be meant, and a time ahead of the clock.
 */
@Injectable()
export class ReceiveWeigherCheck {
  private readonly nextId = (): string => this.ids.next();

  constructor(
    private readonly changes: RecordChange,
    private readonly clock: Clock,
    private readonly ids: Ids,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  async execute(asked: Asked, weigher: PackWeigherRow, form: WeigherCheckForm): Promise<WeigherCheckAnswer> {
    const series = form.series ?? '1';
    const digest = sha256(canonicalText({ ...contentOf(form), series }));
    const at = momentOf(form.at, asked.deviceOffsetMilliseconds ?? 0, this.clock.now());
    const received = { weigher, form, series, digest, at };
    const earlier = await this.known(received);
    if (earlier !== null) return earlier;
    try {
      return await this.record(asked, received);
    } catch (error) {
      // The same check came a second time while the first was written.
      const now = isTakenKey(error) ? await this.known(received) : null;
      if (now === null) throw error;
      return now;
    }
  }

  private async known({ weigher, form, series, digest }: Received): Promise<WeigherCheckAnswer | null> {
    const key = { deviceId: weigher.deviceId, series, sequence: form.sequence };
    const earlier = await knownWeigherCheck(this.reader, key);
    if (earlier === null) return null;
    if (earlier.digest !== digest) throw new Refusal('weigher-check-of-other', { sequence: form.sequence });
    return { ...(await answerOf(this.reader, weigher, earlier.checkId, form.sequence)), isRepeated: true };
  }

  private record(asked: Asked, { weigher, form, series, digest, at }: Received): Promise<WeigherCheckAnswer> {
    return this.changes.run(asked, { series, digest }, async (tx, change) => {
      const plan = await planOfWeigher(tx, weigher, { at, station: form.station ?? null });
      const results = farthestReadings(plan, form.readings);
      const { answer, entry } = await recordCheck(
        { tx, change, nextId: this.nextId },
        {
          ...{ plan, actor: asked.actor, checkedBy: null, isByMachine: true, at, hasHappened: true },
          form: {
            results: results.map((result) => ({ ...result })),
            action: form.action ?? null,
            note: form.note ?? null,
          },
        },
      );
      const { id: weigherId, deviceId } = weigher;
      const readings = canonicalText(contentOf(form).readings);
      await tx.insert(WeigherCheck, {
        ...{ id: this.nextId(), weigherId, deviceId, series, sequence: form.sequence },
        ...{ checkId: answer.id, readings, digest, receivedAt: change.recordedAt },
      });
      return {
        answer: { ...(await answerOf(tx, weigher, answer.id, form.sequence)), isRepeated: false },
        entry: {
          ...entry,
          touches: [...entry.touches, { kind: 'pack-weigher', id: weigherId }],
          after: { ...entry.after, series, sequence: form.sequence },
          occurredAt: at,
          statedAt: at === form.at ? null : form.at,
        },
      };
    });
  }
}

/** What was sent, as it is kept and known again. */
function contentOf({ sequence, at, station, readings, action, note }: WeigherCheckForm) {
  return {
    ...{ sequence, at, station: station ?? null },
    // Left out where nothing is said: a check that was received before these could be said is known again.
    ...{ action: action ?? undefined, note: note ?? undefined },
    readings: readings.map(({ code, readingGrams, readingMilligrams, expectedGrams }) => ({
      code,
      milligrams: readingMilligrams ?? Math.round((readingGrams ?? 0) * 1000),
      expectedMilligrams: expectedGrams == null ? null : Math.round(expectedGrams * 1000),
    })),
  };
}

/** The house's time of a machine's: a little ahead is taken as now. @throws {BadForm} for what is further ahead */
function momentOf(at: Instant, offsetMilliseconds: number, now: Instant): Instant {
  const moved = shifted(at, -offsetMilliseconds);
  if (moved <= now) return moved;
  if (moved <= shifted(now, latenessLimits.aheadMinutes * 60_000)) return now;
  throw new BadForm([{ field: 'at', code: 'weight-ahead-of-clock', facts: { at: moved, now } }]);
}

async function answerOf(
  from: ReadFrom,
  { siteId }: PackWeigherRow,
  checkId: string,
  sequence: number,
): Promise<Omit<WeigherCheckAnswer, 'isRepeated'>> {
  const { planId, station, passed, action, results } = await lineCheckOf(from, siteId, checkId);
  return {
    ...{ checkId, planId, station, sequence, passed, action },
    results: results.map(({ code, passed: isGood, measuredMilligrams }) => {
      return { code, passed: isGood, readingMilligrams: measuredMilligrams ?? 0 };
    }),
  };
}
