/** A half-open range of a run's cumulative count of accepted packs. */
export interface RunRange {
  readonly runId: string;
  readonly fromCount: number;
  readonly toCount: number;
}

/** Ranges of each run, in order, those that touch or overlap put together; empty ones left out. */
export function joinRanges(ranges: readonly RunRange[]): ReadonlyMap<string, readonly RunRange[]> {
  const byRun = new Map<string, RunRange[]>();
  const sorted = ranges.length < 2 ? ranges : ranges.toSorted((one, other) => one.fromCount - other.fromCount);
  for (const range of sorted) {
    if (range.fromCount >= range.toCount) continue;
    const joined = byRun.get(range.runId);
    const last = joined?.at(-1);
    if (joined === undefined) byRun.set(range.runId, [range]);
    else if (last === undefined || range.fromCount > last.toCount) joined.push(range);
    else if (range.toCount > last.toCount) joined[joined.length - 1] = { ...last, toCount: range.toCount };
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
