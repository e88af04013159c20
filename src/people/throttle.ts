import { Inject, Injectable } from '@nestjs/common';
import { sha256 } from '../platform/canonical-text.js';
import { Clock, millisecondsBetween, shifted, type Instant } from '../platform/clock.js';
import { CONFIG, type Config } from '../platform/config.js';
import { UnitOfWork, type Tx } from '../platform/database/unit-of-work.js';
import { Refusal } from '../platform/refusal.js';

const windowMilliseconds = 15 * 60_000;

/** Whom an attempt is counted for. */
export interface Attempt {
  /** What was typed as the person; null for a badge, which names nobody until it is known. */
  readonly person: string | null;
  readonly deviceId: string | null;
  readonly address: string;
}

/**
 * Counts attempts to prove who one is, by person, device and address, each within a quarter of an hour from its first.
 * An attempt is counted before it is looked at, so that many at once gain nothing; one that succeeds is given back.
 */
@Injectable()
export class Throttle {
  constructor(
    private readonly units: UnitOfWork,
    private readonly clock: Clock,
    @Inject(CONFIG) private readonly config: Config,
  ) {}

  /** @throws {Refusal} `too-many-attempts`, telling after how many seconds the next one is looked at */
  async take(attempt: Attempt): Promise<void> {
    const now = this.clock.now();
    await this.units.run(async (tx) => {
      const opened = shifted(now, -windowMilliseconds);
      await tx.sql`DELETE FROM "attempt_count" WHERE "window_started_at" <= ${opened}`;
      for (const name of namesOf(attempt)) await this.count(tx, name, now);
    });
  }

  /** The attempt was no failure: it does not count. */
  async giveBack(attempt: Attempt): Promise<void> {
    await this.units.run(async (tx) => {
      for (const name of namesOf(attempt)) {
        await tx.sql`
          UPDATE "attempt_count" SET "attempts" = "attempts" - 1 WHERE "name" = ${name} AND "attempts" > 0`;
      }
    });
  }

  private async count(tx: Tx, name: string, now: Instant): Promise<void> {
    const most = this.config.attemptsPerQuarterHour;
    // The condition makes the row's lock the judge: of many at once, only as many as are allowed pass.
    const taken = await tx.sql<{ attempts: number }>`
      INSERT INTO "attempt_count" ("name", "window_started_at", "attempts") VALUES (${name}, ${now}, 1)
      ON CONFLICT ("name") DO UPDATE SET "attempts" = "attempt_count"."attempts" + 1
      WHERE "attempt_count"."attempts" < ${most} RETURNING "attempts" AS "attempts"`;
    if (taken.length > 0) return;
    const [row] = await tx.sql<{ startedAt: string }>`
      SELECT "window_started_at" AS "startedAt" FROM "attempt_count" WHERE "name" = ${name}`;
    const left = windowMilliseconds - millisecondsBetween(row?.startedAt ?? now, now);
    const seconds = Math.max(1, Math.ceil(left / 1000));
    throw new Refusal('too-many-attempts', { seconds, minutes: Math.ceil(seconds / 60) });
  }
}

/** One fixed order, so that two attempts never wait for each other in a circle. What was typed is kept hashed only. */
function namesOf({ person, deviceId, address }: Attempt): readonly string[] {
  const names = [`address:${address}`];
  if (deviceId !== null) names.push(`device:${deviceId}`);
  if (person !== null) names.push(`person:${sha256(person)}`);
  return names;
}
