import type { Actor } from '../platform/actor.js';
import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { SentenceFacts } from '../platform/refusal.js';
import { groupBy } from '../platform/group-by.js';
import { interruptingCauses, minutesToAct, pointClassOf } from './point-classes.js';

/** A banner: the latest open point of a cause, and how many of that cause are open. */
export interface Banner {
  readonly pointId: string;
  readonly cause: string;
  readonly facts: SentenceFacts;
  readonly subjectKind: string;
  readonly subjectId: string;
  readonly raisedAt: Instant;
  readonly pointClass: 'stop' | 'act-soon';
  readonly withinMinutes: number;
  readonly pointCount: number;
  /** All open points of the cause, the oldest first. */
  readonly pointIds: readonly string[];
}

type BannerPoint = Pick<Banner, 'pointId' | 'cause' | 'subjectKind' | 'subjectId' | 'raisedAt'> & {
  readonly facts: string;
};

/** The points that may interrupt somebody now: of their roles or their own, and not put aside. What stops comes first. */
export async function bannersFor(from: ReadFrom, actor: Actor, now: Instant): Promise<readonly Banner[]> {
  if (actor.roles.length === 0) return [];
  const rows = await from.sql<BannerPoint>`
    SELECT p."id" AS "pointId", p."cause", p."facts", p."subject_kind" AS "subjectKind",
      p."subject_id" AS "subjectId", p."raised_at" AS "raisedAt"
    FROM "open_point_state" s JOIN "open_point" p ON p."id" = s."point_id"
    WHERE s."site_id" = ${actor.siteId} AND s."cause" IN (${() => [...interruptingCauses]})
      AND p."role" IN (${() => [...actor.roles]})
      AND (p."person_id" IS NULL OR p."person_id" = ${actor.personId ?? ''})
      AND NOT EXISTS (
        SELECT 1 FROM "point_shelf" h
        WHERE h."point_id" = p."id" AND h."voided_by" IS NULL AND h."until_at" > ${now})
    ORDER BY p."id" LIMIT 500`;
  return [...groupBy(rows, (row) => row.cause).values()]
    .flatMap((points) => bannerOf(points))
    .sort((one, other) => rank(one) - rank(other) || (one.raisedAt < other.raisedAt ? 1 : -1));
}

function bannerOf(points: readonly BannerPoint[]): Banner[] {
  const last = points.at(-1);
  if (last === undefined) return [];
  const pointClass = pointClassOf(last.cause);
  if (pointClass === 'note') return [];
  return [
    {
      ...last,
      facts: JSON.parse(last.facts) as SentenceFacts,
      pointClass,
      withinMinutes: minutesToAct(last.cause) ?? 0,
      pointCount: points.length,
      pointIds: points.map(({ pointId }) => pointId),
    },
  ];
}

function rank({ pointClass }: Banner): number {
  return pointClass === 'stop' ? 0 : 1;
}
