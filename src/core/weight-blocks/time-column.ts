import type { BitReader } from './bit-reader.js';
import type { BitWriter } from './bit-writer.js';
import { DamagedWeights } from './damaged-weights.js';
import { middleOf, stepOf } from './lattice.js';
import { latestCentiseconds } from './weight-columns.js';
import { chooseColumn, readColumn, type ChosenColumn } from './whole-column.js';

/** The interval of a regular clock is kept in parts of a step so small that 65 536 ticks drift by half a step at most. */
const partsOfStep = 65_536;
/** Ticks times parts stay whole below 2^53. */
const longestParts = 2 ** 36;

/**
 * Writes when each pack was weighed: the first time, then either each interval less the usual one, or each time less that
 * of a regular clock, whichever takes less. The step is the resolution that the times have by themselves.
 */
export function writeTimes(writer: BitWriter, at: Float64Array): void {
  const first = at[0] ?? 0;
  const step = stepOf(at);
  const ticks = new Float64Array(at.length);
  for (let place = 0; place < ticks.length; place += 1) ticks[place] = ((at[place] ?? 0) - first) / step;
  const [usual, byIntervals] = chooseIntervals(ticks);
  const clock = chooseClock(ticks);
  writer.putNumber(first);
  writer.putNumber(step);
  if (clock !== null && clock.column.bits < byIntervals.bits) {
    writer.put(1, 1);
    writer.putNumber(clock.parts);
    clock.column.write(writer);
  } else {
    writer.put(0, 1);
    writer.putSigned(usual);
    byIntervals.write(writer);
  }
}

/** The usual interval, and what is left of each. */
function chooseIntervals(ticks: Float64Array): [number, ChosenColumn] {
  if (ticks.length === 1) return [0, chooseColumn(new Float64Array(0))];
  const intervals = new Float64Array(ticks.length - 1);
  for (let place = 0; place < intervals.length; place += 1) {
    intervals[place] = (ticks[place + 1] ?? 0) - (ticks[place] ?? 0);
  }
  const usual = middleOf(intervals);
  for (let place = 0; place < intervals.length; place += 1) intervals[place] = (intervals[place] ?? 0) - usual;
  return [usual, chooseColumn(intervals)];
}

/** A regular clock from the first time to the last, and how far each time is from it; null where none fits. */
function chooseClock(ticks: Float64Array): { parts: number; column: ChosenColumn } | null {
  const parts = Math.round(((ticks.at(-1) ?? 0) * partsOfStep) / Math.max(1, ticks.length - 1));
  if (!(parts >= 0 && parts <= longestParts)) return null;
  const distances = new Float64Array(ticks.length);
  for (let place = 0; place < distances.length; place += 1) {
    distances[place] = (ticks[place] ?? 0) - clockAt(place, parts);
  }
  return { parts, column: chooseColumn(distances) };
}

function clockAt(place: number, parts: number): number {
  return Math.floor((place * parts) / partsOfStep);
}

/**
 * Reads what `writeTimes` wrote.
 *
 * @throws DamagedWeights
 */
export function readTimes(reader: BitReader, count: number): Float64Array {
  const first = reader.takeNumber();
  const step = reader.takeNumber();
  const ticks = reader.take(1) === 1 ? readByClock(reader, count) : readByIntervals(reader, count);
  const at = new Float64Array(count);
  ticks.forEach((tick, place) => {
    const time = first + tick * step;
    if (!(time >= 0 && time <= latestCentiseconds)) throw new DamagedWeights('impossible-value', `a time of ${time}`);
    at[place] = time;
  });
  return at;
}

function readByClock(reader: BitReader, count: number): Float64Array {
  const parts = reader.takeNumber();
  if (parts > longestParts) throw new DamagedWeights('impossible-value', `a clock of ${parts} parts`);
  return readColumn(reader, count).map((distance, place) => distance + clockAt(place, parts));
}

function readByIntervals(reader: BitReader, count: number): Float64Array {
  const usual = reader.takeSigned();
  const ticks = new Float64Array(count);
  let tick = 0;
  readColumn(reader, count - 1).forEach((rest, place) => {
    tick += usual + rest;
    ticks[place + 1] = tick;
  });
  return ticks;
}
