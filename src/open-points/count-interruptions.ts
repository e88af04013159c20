import { Inject, Injectable } from '@nestjs/common';
import type { Actor } from '../platform/actor.js';
import { Clock, millisecondsBetween, shifted, type Instant } from '../platform/clock.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { UnitOfWork, type Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { BannerSeen } from './banner-seen.entity.js';
import { bannersFor, type Banner } from './banners.js';

/** The same cause within ten minutes raises a number and interrupts nobody (notes of practice: one in ten minutes). */
const sameCauseMilliseconds = 10 * 60_000;

/** Counts tell of habits, not of sugar: a year shows them over all seasons, and no longer is kept. */
const keptMilliseconds = 365 * 24 * 60 * 60_000;

/** Before all instants and ids: nothing was shown yet. */
const never = { lastPointId: '', countedAt: '1970-01-01T00:00:00.000Z' };

/**
 * The banners of a person, and how often they interrupt: a point that a banner shows to them for the first time counts
 * once, in the hour in which it does. Not facts, so they pass the journal by.
 */
@Injectable()
export class CountInterruptions {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly units: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: Ids,
  ) {}

  async show(actor: Actor): Promise<readonly Banner[]> {
    const now = this.clock.now();
    const banners = await bannersFor(this.reader, actor, now);
    const { personId } = actor;
    if (personId === null || banners.length === 0) return banners;
    const seen = await seenBy(this.reader, personId);
    const unseen = banners.filter((banner) => newIn(banner, seen.get(banner.cause) ?? never.lastPointId) > 0);
    if (unseen.length > 0) {
      await this.units.run(async (tx) => {
        for (const banner of unseen) await this.count(tx, { siteId: actor.siteId, personId, banner, now });
      });
    }
    return banners;
  }

  private async count(tx: Tx, showing: Showing): Promise<void> {
    const { personId, banner, now } = showing;
    const { cause } = banner;
    await tx.sql`
      INSERT INTO "banner_seen" ("id", "person_id", "cause", "last_point_id", "counted_at")
      VALUES (${this.ids.next()}, ${personId}, ${cause}, ${never.lastPointId}, ${never.countedAt})
      ON CONFLICT DO NOTHING`;
    const before = await tx.findOne(BannerSeen, { personId, cause });
    if (before === null) throw new RangeError(`nothing is known of banner ${cause}`);
    const { lastPointId } = before;
    const isRepeat = millisecondsBetween(before.countedAt, now) < sameCauseMilliseconds;
    const countedAt = isRepeat ? before.countedAt : now;
    const seen = { lastPointId: banner.pointId, countedAt };
    // Another page of the same person may have shown it meanwhile.
    if ((await tx.update(BannerSeen, { personId, cause, lastPointId }, seen)) !== 1) return;
    const newCount = newIn(banner, lastPointId);
    await this.add(tx, showing, { shown: isRepeat ? 0 : 1, repeats: isRepeat ? newCount : newCount - 1 });
  }

  private async add(
    tx: Tx,
    { siteId, personId, banner, now }: Showing,
    by: { readonly shown: number; readonly repeats: number },
  ): Promise<void> {
    const hourStartsAt = `${now.slice(0, 13)}:00:00.000Z`;
    await forgetBefore(tx, siteId, shifted(now, -keptMilliseconds));
    await tx.sql`
      INSERT INTO "interruption_count"
        ("id", "site_id", "person_id", "hour_starts_at", "cause", "shown_count", "repeat_count")
      VALUES (${this.ids.next()}, ${siteId}, ${personId}, ${hourStartsAt}, ${banner.cause}, ${by.shown}, ${by.repeats})
      ON CONFLICT ("person_id", "hour_starts_at", "cause") DO UPDATE SET
        "shown_count" = "interruption_count"."shown_count" + ${by.shown},
        "repeat_count" = "interruption_count"."repeat_count" + ${by.repeats}`;
  }
}

async function forgetBefore(tx: Tx, siteId: string, instant: Instant): Promise<void> {
  await tx.sql`DELETE FROM "interruption_count" WHERE "site_id" = ${siteId} AND "hour_starts_at" < ${instant}`;
  await tx.sql`
    DELETE FROM "banner_seen" WHERE "counted_at" < ${instant} AND "counted_at" <> ${never.countedAt}
      AND "person_id" IN (SELECT "id" FROM "person" WHERE "site_id" = ${siteId})`;
}

interface Showing {
  readonly siteId: string;
  readonly personId: string;
  readonly banner: Banner;
  readonly now: Instant;
}

/** How many points of a banner came after the last one that was shown. */
function newIn(banner: Banner, lastPointId: string): number {
  return banner.pointIds.filter((id) => id > lastPointId).length;
}

/** The last point of each cause that was shown to a person. */
async function seenBy(from: ReadFrom, personId: string): Promise<ReadonlyMap<string, string>> {
  const rows = await from.sql<{ cause: string; lastPointId: string }>`
    SELECT "cause", "last_point_id" AS "lastPointId" FROM "banner_seen" WHERE "person_id" = ${personId}`;
  return new Map(rows.map((row) => [row.cause, row.lastPointId]));
}
