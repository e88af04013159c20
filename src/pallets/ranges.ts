import type { CountRange } from './pallet-rows.js';

/** A half-open range whose end may not be known yet. */
export interface OpenRange {
  readonly runId: string;
  readonly fromCount: number;
  readonly toCount: number | null;
}

/** What two ranges have in common; null: nothing, or they are of two runs. */
export function clipped(one: CountRange, other: OpenRange): CountRange | null {
  if (one.runId !== other.runId) return null;
  const fromCount = Math.max(one.fromCount, other.fromCount);
  const toCount = Math.min(one.toCount, other.toCount ?? one.toCount);
  return fromCount < toCount ? { runId: one.runId, fromCount, toCount } : null;
}

export function overlaps(one: CountRange, other: OpenRange): boolean {
  return clipped(one, other) !== null;
}

/** Ranges in order, those that touch or overlap made one. */
export function united(ranges: readonly CountRange[]): readonly CountRange[] {
  const ordered = [...ranges].sort((one, other) =>
    one.runId === other.runId ? one.fromCount - other.fromCount : one.runId < other.runId ? -1 : 1,
  );
  const joined: CountRange[] = [];
  for (const { runId, fromCount, toCount } of ordered) {
    const last = joined.at(-1);
    if (last?.runId === runId && last.toCount >= fromCount) {
      joined[joined.length - 1] = { ...last, toCount: Math.max(last.toCount, toCount) };
    } else {
      joined.push({ runId, fromCount, toCount });
    }
  }
  return joined;
}

export function packsIn(ranges: readonly Pick<CountRange, 'fromCount' | 'toCount'>[]): number {
  return ranges.reduce((sum, range) => sum + range.toCount - range.fromCount, 0);
}
