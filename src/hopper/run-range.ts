/** A half-open range of a run's cumulative count of accepted packs. */
export interface RunRange {
  readonly runId: string;
  readonly fromCount: number;
  readonly toCount: number;
}

/** Ranges of each run, in order, those that touch or overlap put together; empty ones left out. */
export function joinRanges(ranges: readonly RunRange[]): ReadonlyMap<string, readonly RunRange[]> {
  const byRun = new Map<string, RunRange[]>();
  const sorted = ranges.filter(({ fromCount, toCount }) => fromCount < toCount);
  for (const range of sorted.toSorted((one, other) => one.fromCount - other.fromCount)) {
    const joined = byRun.get(range.runId) ?? [];
    const last = joined.at(-1);
    if (last === undefined || range.fromCount > last.toCount) joined.push(range);
    else joined[joined.length - 1] = { ...last, toCount: Math.max(last.toCount, range.toCount) };
    byRun.set(range.runId, joined);
  }
  return byRun;
}

/** Whether a range lies wholly in one of these, which are joined and in order. */
export function liesIn(joined: readonly RunRange[], fromCount: number, toCount: number): boolean {
  let [low, high] = [0, joined.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((joined[middle]?.toCount ?? 0) < toCount) low = middle + 1;
    else high = middle;
  }
  return (joined[low]?.fromCount ?? Infinity) <= fromCount;
}
