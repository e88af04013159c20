import type { BagOrigin } from '../drying/bag-origins.js';
import { bagsOf } from '../drying/bulk-bags.js';
import { toBoolean } from '../platform/database/stored-values.js';
import { inChunks } from '../platform/database/in-chunks.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { bagsTakenOut } from './narrowings.js';

/** What a hold can be placed on. */
export const scopeKinds = [
  'bulk-bag',
  'dryer-run',
  'dryer-shift',
  'lot',
  'packing-run',
  'packing-shift',
  'pallet',
  'hopper-period',
  'film-lot',
] as const;
export type ScopeKind = (typeof scopeKinds)[number];
export interface HoldScope {
  readonly kind: ScopeKind;
  /** Of a shift: its dryer or its line. */
  readonly id: string;
}

/** Which part of its thing a hold is on; all null: the whole. */
export interface HoldPart {
  /** For a part of a run: from this pack on, up to before `toCount`. */
  readonly fromCount: number | null;
  readonly toCount: number | null;
  /** Of a shift always, and of minutes of a run: from this instant until before `untilAt`. */
  readonly fromAt: string | null;
  readonly untilAt: string | null;
}

/** An open hold. */
export interface HoldRow extends HoldPart {
  readonly id: string;
  readonly number: string;
  readonly scopeKind: ScopeKind;
  readonly scopeId: string;
  /** Safety until a quality officer sets another class. */
  readonly hazard: 'safety' | 'quality';
  readonly reason: string;
  readonly placedAt: string;
  /** Parts were taken out of its reach, and not all of that was taken back. */
  readonly isNarrowed: boolean;
}

export const verdicts = ['waiting', 'released', 'rejected', 'concession'] as const;
export type Verdict = (typeof verdicts)[number];

/** Quality's standing decision. */
export interface DecisionRow {
  readonly verdict: Verdict;
  readonly reason: string | null;
  /** Null where nobody has decided yet. */
  readonly decidedAt: string | null;
}

/** How a bag stands with quality. */
export interface BagStanding {
  readonly decision: DecisionRow;
  /** Open holds on the bag itself, on its dryer run and on its dryer shift, unless it was taken out of them. */
  readonly holds: readonly HoldRow[];
  /** The grade it was assigned, else the one that the dryer meant. */
  readonly gradeId: string;
  readonly isOnHold: boolean;
}

/** Open holds on any of these things, the oldest first. */
export async function openHolds(from: ReadFrom, scopes: readonly HoldScope[]): Promise<readonly HoldRow[]> {
  const found: HoldRow[] = [];
  for (const kind of new Set(scopes.map((scope) => scope.kind))) {
    const ids = scopes.filter((scope) => scope.kind === kind).map(({ id }) => id);
    found.push(
      ...(
        await inChunks(
          ids,
          (chunk) => from.sql<StoredHold>`
          ${() => holdSelect} AND h."scope_kind" = ${kind} AND h."scope_id" IN (${() => chunk})`,
        )
      ).map(toHold),
    );
  }
  return found.sort((one, other) => (one.placedAt + one.id < other.placedAt + other.id ? -1 : 1));
}

/** Open holds on all things of one kind. */
export async function openHoldsOnKind(from: ReadFrom, kind: ScopeKind): Promise<readonly HoldRow[]> {
  const rows = await from.sql<StoredHold>`${() => holdSelect} AND h."scope_kind" = ${kind}`;
  return rows.map(toHold);
}

type StoredHold = Omit<HoldRow, 'isNarrowed'> & { readonly isNarrowed: boolean | number };

function toHold(row: StoredHold): HoldRow {
  return { ...row, isNarrowed: toBoolean(row.isNarrowed) };
}

/** The latest good decision on a thing; `waiting` where there is none. */
export async function decisionOn(from: ReadFrom, kind: string, id: string): Promise<DecisionRow> {
  return (await decisionsOn(from, kind, [id])).get(id) ?? undecided;
}

/** The latest good decisions on things of one kind; what nobody decided on is `waiting`. */
export async function decisionsOn(
  from: ReadFrom,
  kind: string,
  ids: readonly string[],
): Promise<ReadonlyMap<string, DecisionRow>> {
  const rows = await inChunks(
    ids,
    (chunk) => from.sql<DecisionRow & { subjectId: string }>`
      SELECT d."subject_id" AS "subjectId", d."verdict", d."reason", d."decided_at" AS "decidedAt" FROM "decision" d
      WHERE d."subject_kind" = ${kind} AND d."subject_id" IN (${() => chunk}) AND d."voided_by" IS NULL
      ORDER BY d."decided_at", d."id"`,
  );
  const standing = new Map<string, DecisionRow>(ids.map((id) => [id, undecided]));
  for (const { subjectId, verdict, reason, decidedAt } of rows) standing.set(subjectId, { verdict, reason, decidedAt });
  return standing;
}

/** How one bag stands with quality. */
export async function bagStandingOf(from: ReadFrom, bag: BagOrigin): Promise<BagStanding> {
  const standing = (await standingsOf(from, [bag])).get(bag.id);
  if (standing === undefined) throw new Error(`no standing of bag ${bag.id}`);
  return standing;
}

/** How bags stand with quality, by their ids; unknown and void ones are left out. */
export async function bagStandingsOf(
  from: ReadFrom,
  bagIds: readonly string[],
): Promise<ReadonlyMap<string, BagStanding>> {
  return standingsOf(from, await bagsOf(from, bagIds));
}

/** The same for bags that have been read already. */
export async function standingsOf(
  from: ReadFrom,
  bags: readonly BagOrigin[],
): Promise<ReadonlyMap<string, BagStanding>> {
  const bagIds = bags.map(({ id }) => id);
  const decisions = await decisionsOn(from, 'bulk-bag', bagIds);
  const grades = await assignedGrades(from, bagIds);
  const holds = await openHolds(from, bags.flatMap(scopesOfBag));
  const takenOut = await bagsTakenOut(from, holds);
  return new Map(
    bags.map((bag) => {
      const own = holds.filter((hold) => isOnBag(hold, bag) && takenOut.get(hold.id)?.has(bag.id) !== true);
      const decision = decisions.get(bag.id) ?? undecided;
      const gradeId = grades.get(bag.id) ?? bag.intendedGradeId;
      return [bag.id, { decision, holds: own, gradeId, isOnHold: own.length > 0 }];
    }),
  );
}

const undecided: DecisionRow = { verdict: 'waiting', reason: null, decidedAt: null };

/** A hold on a dryer run holds every bag of it, one on a dryer's shift every bag that was closed in it. */
function scopesOfBag({ id, dryerRunId, dryerId }: BagOrigin): readonly HoldScope[] {
  const scopes: HoldScope[] = [{ kind: 'bulk-bag', id }];
  if (dryerRunId !== null) scopes.push({ kind: 'dryer-run', id: dryerRunId });
  if (dryerId !== null) scopes.push({ kind: 'dryer-shift', id: dryerId });
  return scopes;
}

function isOnBag({ scopeKind, scopeId, fromAt, untilAt }: HoldRow, bag: BagOrigin): boolean {
  if (scopeKind !== 'dryer-shift') return scopeId === bag.id || scopeId === bag.dryerRunId;
  const { dryerId, filledAt } = bag;
  return scopeId === dryerId && filledAt !== null && filledAt >= (fromAt ?? '') && filledAt < (untilAt ?? '');
}

async function assignedGrades(from: ReadFrom, bagIds: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const rows = await inChunks(
    bagIds,
    (chunk) => from.sql<{ bagId: string; gradeId: string }>`
      SELECT g."bag_id" AS "bagId", g."grade_id" AS "gradeId" FROM "grade_assignment" g
      WHERE g."bag_id" IN (${() => chunk}) AND g."voided_by" IS NULL ORDER BY g."assigned_at", g."id"`,
  );
  return new Map(rows.map(({ bagId, gradeId }) => [bagId, gradeId]));
}

/** Holds that nobody lifted, each with the latest class that was set. */
const holdSelect = `
  SELECT h."id", h."number", h."scope_kind" AS "scopeKind", h."scope_id" AS "scopeId", h."from_count" AS "fromCount",
    h."to_count" AS "toCount", h."from_at" AS "fromAt", h."until_at" AS "untilAt", h."reason", h."placed_at" AS "placedAt",
    COALESCE((SELECT c."hazard" FROM "hold_class" c WHERE c."hold_id" = h."id" AND c."voided_by" IS NULL
      ORDER BY c."set_at" DESC, c."id" DESC LIMIT 1), 'safety') AS "hazard",
    EXISTS (SELECT 1 FROM "hold_narrowing" n WHERE n."hold_id" = h."id" AND n."voided_by" IS NULL) AS "isNarrowed"
  FROM "hold" h
  WHERE h."voided_by" IS NULL
    AND NOT EXISTS (SELECT 1 FROM "hold_lift" l WHERE l."hold_id" = h."id" AND l."voided_by" IS NULL)`;
