import { standardUncertaintyWithin } from '../core/mass-balance/uncertainty.js';
import { millisecondsBetween, shifted, type Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { AccountLine, AccountSpan, NotSeen } from './account-view.js';
import { toLine } from './to-line.js';

/**
 * How far from the start or end of an account the hopper may have been looked at: nobody leaves the line to do it at the
 * stroke of six. Our own value, no source.
 */
const furthestMinutes = 30;

/** Someone or something looked into the hopper: a level seen, or a proven empty with its residue. */
interface Sight {
  readonly id: string;
  readonly lowerGrams: number;
  readonly grams: number;
  readonly upperGrams: number;
  readonly seenAt: Instant;
}

/** What was in the hopper at the start and end of an account, and when that was. */
export interface HopperSeen {
  readonly opening: AccountLine | null;
  readonly openingNotSeen: NotSeen | null;
  readonly closing: AccountLine | null;
  readonly closingNotSeen: NotSeen | null;
  readonly drawnFromAt: Instant;
  readonly drawnUntilAt: Instant;
}

/**
 * What the hopper held at the start and end of an account, by whoever looked nearest to them. While a bag hangs with
 * its spout open a look says nothing: what is still in the bag is in no hopper and on no scale.
 */
export async function hopperSeen(from: ReadFrom, span: AccountSpan): Promise<HopperSeen> {
  const reach = Math.min(furthestMinutes * 60_000, millisecondsBetween(span.fromAt, span.untilAt) / 2);
  const opening = await seenAround(from, span.hopperId, span.fromAt, reach);
  const closing = await seenAround(from, span.hopperId, span.untilAt, reach);
  // A look in the very middle of a short account would be both its start and its end.
  const isSame = opening.sight !== null && opening.sight.id === closing.sight?.id;
  const last = isSame ? null : closing.sight;
  return {
    opening: opening.sight === null ? null : lineOf(opening.sight, 'opening'),
    openingNotSeen: opening.notSeen,
    closing: last === null ? null : lineOf(last, 'closing'),
    closingNotSeen: isSame ? 'nobody-looked' : closing.notSeen,
    drawnFromAt: opening.sight?.seenAt ?? span.fromAt,
    drawnUntilAt: last?.seenAt ?? span.untilAt,
  };
}

interface Seen {
  readonly sight: Sight | null;
  readonly notSeen: NotSeen | null;
}

async function seenAround(from: ReadFrom, hopperId: string, at: Instant, reach: number): Promise<Seen> {
  const sights = await sightsBetween(from, hopperId, shifted(at, -reach), shifted(at, reach));
  const nearest = [...sights].sort((one, other) => distance(one, at) - distance(other, at));
  for (const sight of nearest) {
    if (!(await hangsAt(from, hopperId, sight.seenAt))) return { sight, notSeen: null };
  }
  return { sight: null, notSeen: nearest.length > 0 ? 'bag-hanging' : 'nobody-looked' };
}

const distance = ({ seenAt }: Sight, at: Instant): number => Math.abs(millisecondsBetween(seenAt, at));

async function sightsBetween(from: ReadFrom, hopperId: string, fromAt: Instant, untilAt: Instant): Promise<Sight[]> {
  const levels = await from.sql<Omit<Sight, 'grams'>>`
    SELECT l."id", l."lower_grams" AS "lowerGrams", l."upper_grams" AS "upperGrams", l."seen_at" AS "seenAt"
    FROM "level_seen" l JOIN "hopper_period" p ON p."id" = l."period_id"
    WHERE p."hopper_id" = ${hopperId} AND l."seen_at" >= ${fromAt} AND l."seen_at" <= ${untilAt}
      AND l."voided_by" IS NULL ORDER BY l."seen_at", l."id"`;
  const empties = await from.sql<Omit<Sight, 'lowerGrams'>>`
    SELECT e."id", e."residue_grams" AS "grams", e."residue_upper_grams" AS "upperGrams", e."proven_at" AS "seenAt"
    FROM "proven_empty" e JOIN "hopper_period" p ON p."id" = e."period_id"
    WHERE p."hopper_id" = ${hopperId} AND e."proven_at" >= ${fromAt} AND e."proven_at" <= ${untilAt}
      AND e."voided_by" IS NULL ORDER BY e."proven_at", e."id"`;
  return [
    // Someone who proves it empty looks closer than someone who looks at a level at the same moment.
    ...empties.map((empty) => ({ ...empty, lowerGrams: Math.max(0, 2 * empty.grams - empty.upperGrams) })),
    ...levels.map((level) => ({ ...level, grams: Math.round((level.lowerGrams + level.upperGrams) / 2) })),
  ];
}

/** Whether a bag hung over the hopper at an instant with its spout open. */
async function hangsAt(from: ReadFrom, hopperId: string, at: Instant): Promise<boolean> {
  const hanging = await from.sql`
    SELECT t."id" FROM "tip" t
    JOIN "hopper_period" p ON p."id" = t."period_id"
    LEFT JOIN "tip_off" o ON o."tip_id" = t."id" AND o."voided_by" IS NULL
    WHERE p."hopper_id" = ${hopperId} AND t."voided_by" IS NULL AND t."source" <> ${'rework-bin'}
      AND t."opened_at" < ${at} AND (o."off_at" IS NULL OR o."off_at" > ${at}) LIMIT 1`;
  return hanging.length > 0;
}

/** Between two amounts, each as likely as the other: the middle, give or take. */
function lineOf({ id, grams, lowerGrams, upperGrams, seenAt }: Sight, kind: 'opening' | 'closing'): AccountLine {
  const limitGrams = Math.max(grams - lowerGrams, upperGrams - grams);
  return toLine({
    side: kind === 'opening' ? 'in' : 'out',
    kind,
    recordId: id,
    code: null,
    at: seenAt,
    grams,
    basis: 'measured',
    uncertainty: { standardGrams: standardUncertaintyWithin(limitGrams), sharedBy: null, sharedStandardGrams: 0 },
    isDoubtful: false,
    packs: null,
  });
}
