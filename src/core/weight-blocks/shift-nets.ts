import type { WeightColumns } from './weight-columns.js';

/** A tare that was found wrong: so much is added to the net of each pack of a range of sequences. */
export interface NetShift {
  readonly fromSequence: number;
  /** The last one, included. */
  readonly toSequence: number;
  /** Below zero where packs were tared too lightly. */
  readonly addedMilligrams: number;
}

/**
 * The weights with some shifts added, one after the other; the columns that were given stay as they are. Where no shift
 * meets them they are given back.
 *
 * @throws RangeError where a net would leave the range of a block
 * @example shiftNets(columns, [{ fromSequence: 1, toSequence: 9, addedMilligrams: -500 }])
 */
export function shiftNets(columns: WeightColumns, shifts: readonly NetShift[]): WeightColumns {
  const { sequences } = columns;
  const [first, last] = [sequences[0] ?? 0, sequences.at(-1) ?? 0];
  const meeting = shifts.filter(({ fromSequence, toSequence }) => fromSequence <= last && toSequence >= first);
  if (columns.count === 0 || meeting.length === 0) return columns;
  const netMilligrams = columns.netMilligrams.map((net, place) => {
    const sequence = sequences[place] ?? 0;
    const shifted = meeting.reduce(
      (sum, shift) =>
        sequence >= shift.fromSequence && sequence <= shift.toSequence ? sum + shift.addedMilligrams : sum,
      net,
    );
    if ((shifted | 0) !== shifted) throw new RangeError(`A net of ${shifted} mg is no weight of a pack`);
    return shifted;
  });
  return { ...columns, netMilligrams };
}
