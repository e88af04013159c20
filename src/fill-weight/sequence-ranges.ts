/** Sequences without a gap, both ends included. */
export interface SequenceRange {
  readonly from: number;
  readonly to: number;
}

/** The ranges of ascending sequences: no two of them touch. */
export function rangesOf(sequences: ArrayLike<number>): SequenceRange[] {
  const ranges: { from: number; to: number }[] = [];
  let last: { from: number; to: number } | undefined;
  for (let place = 0; place < sequences.length; place += 1) {
    const sequence = sequences[place] ?? 0;
    if (last !== undefined && sequence === last.to + 1) {
      last.to = sequence;
    } else {
      last = { from: sequence, to: sequence };
      ranges.push(last);
    }
  }
  return ranges;
}

/** Two sets of ranges as one, ascending; ranges that overlap or touch become one. */
export function unitedRanges(one: readonly SequenceRange[], other: readonly SequenceRange[]): SequenceRange[] {
  const united: { from: number; to: number }[] = [];
  for (const { from, to } of [...one, ...other].sort((a, b) => a.from - b.from)) {
    const last = united.at(-1);
    if (last !== undefined && from <= last.to + 1) last.to = Math.max(last.to, to);
    else united.push({ from, to });
  }
  return united;
}

/** The parts of ranges that lie between two sequences. */
export function rangesWithin(ranges: readonly SequenceRange[], { from, to }: SequenceRange): SequenceRange[] {
  return ranges
    .filter((range) => range.to >= from && range.from <= to)
    .map((range) => ({ from: Math.max(from, range.from), to: Math.min(to, range.to) }));
}
