import type { RunCounts } from './packing-run-rows.js';

/** A half-open range of a run's cumulative count of accepted packs. */
export interface RunRange {
  readonly runId: string;
  readonly fromCount: number;
  readonly toCount: number;
}

/** What two ranges have in common; null: nothing, or they are of two runs. */
export function clipped(one: RunRange, other: RunCounts): RunRange | null {
  if (one.runId !== other.runId) return null;
  const fromCount = Math.max(one.fromCount, other.fromCount);
  const toCount = Math.min(one.toCount, other.toCount ?? one.toCount);
  return fromCount < toCount ? { runId: one.runId, fromCount, toCount } : null;
}

export function overlaps(one: RunRange, other: RunCounts): boolean {
  return clipped(one, other) !== null;
}

/** Ranges in order, those that touch or overlap made one. */
export function united(ranges: readonly RunRange[]): readonly RunRange[] {
  const ordered = [...ranges].sort((one, other) =>
    one.runId === other.runId ? one.fromCount - other.fromCount : one.runId < other.runId ? -1 : 1,
  );
  const joined: RunRange[] = [];
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

export function packsIn(ranges: readonly Pick<RunRange, 'fromCount' | 'toCount'>[]): number {
  return ranges.reduce((sum, range) => sum + range.toCount - range.fromCount, 0);
}

/** What is left of ranges when others are taken away. */
export function without(ranges: readonly RunRange[], taken: readonly RunRange[]): readonly RunRange[] {
  const away = united(taken);
  return ranges.flatMap((range) => {
    const left: RunRange[] = [];
    let from = range.fromCount;
    for (const one of away) {
      const cut = clipped(range, one);
      if (cut === null) continue;
      if (from < cut.fromCount) left.push({ runId: range.runId, fromCount: from, toCount: cut.fromCount });
      from = cut.toCount;
    }
    if (from < range.toCount) left.push({ runId: range.runId, fromCount: from, toCount: range.toCount });
    return left;
  });
}

/** What ranges have in common with others. */
export function shared(ranges: readonly RunRange[], others: readonly RunCounts[]): readonly RunRange[] {
  return united(ranges.flatMap((range) => others.flatMap((other) => clipped(range, other) ?? [])));
}
