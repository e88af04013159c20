import type { MeanNet } from './mean-net.js';

/** Packs that a weigher weighed and let pass within one minute. */
export interface WeighedMinute {
  /** Whole minutes since any instant, the same for all. */
  readonly minute: number;
  /** 1 or more. */
  readonly packCount: number;
  /** Of net less nominal quantity. */
  readonly errorSumMilligrams: number;
  /** How far off the weigher may be: its maximum permissible error. */
  readonly weigherErrorMilligrams: number;
}

/** A run whose packs were weighed one by one, or most of them. */
export interface WeighedRun {
  readonly nominalMilligrams: number;
  /** By ascending minute; a minute stands there once. */
  readonly minutes: readonly WeighedMinute[];
  /** Packs that were counted as accepted; those above what was weighed were not weighed. */
  readonly countedPackCount: number;
  /** What packs are taken to hold that were not weighed: by a hand sample, or assumed. */
  readonly otherwise: Pick<MeanNet, 'meanMilligrams' | 'lowerMilligrams' | 'upperMilligrams'>;
}

/** The mean net of such a run, and what it rests on. */
export interface WeighedMeanNet extends Pick<MeanNet, 'meanMilligrams' | 'lowerMilligrams' | 'upperMilligrams'> {
  readonly weighedPackCount: number;
  readonly unweighedPackCount: number;
}

/** Limits are rounded outward to this, so that they stand still while a run goes on. Our own value, no source. */
const limitStepMilligrams = 100;

/**
 * The mean net of a run's packs from the weight of each, with hard limits that hold for each stretch of the run and not
 * for the whole of it alone.
 *
 * A pallet, a printed minute or what left a hopper between two bags is a stretch: a few minutes to hours. Over it packs
 * may hold more or less than over the run, because a filler drifts, and because packs vary. So the limits are not the mean
 * of the run give or take the error of the weigher: they are the lowest and the highest mean of any minute in it, each
 * give or take that error. What is made of whole minutes cannot lie outside, since its mean lies between those of its
 * minutes. Minutes with less than half as many packs as usual are taken together with the next, as a handful of packs
 * says more of chance than of the run.
 *
 * The weigher's error is a limit and the same in every reading, so it is added and no number of packs shrinks it. What the
 * nets were tared with is taken as right; what is known to be wrong there is corrected before.
 *
 * Packs that were counted but not weighed may hold anything between the limits that are taken otherwise, and nobody knows
 * where in the run they were; at worst in one minute. A few widen the limits by their share of a usual minute, a minute's
 * worth or more give the whole run limits that hold the other ones too. The mean takes them in by their number.
 *
 * The limits are rounded outward to 100 mg and never below zero.
 *
 * @param run whole counts; milligrams whole
 * @returns `otherwise` where no pack was weighed
 * @throws RangeError where minutes do not ascend or hold no packs
 * @example weighedMeanNet({ nominalMilligrams: 1_000_000, countedPackCount: 80, otherwise, minutes: [
 *   { minute: 0, packCount: 40, errorSumMilligrams: 40_000, weigherErrorMilligrams: 500 },
 *   { minute: 1, packCount: 40, errorSumMilligrams: 80_000, weigherErrorMilligrams: 500 },
 * ] }) // mean 1 001 500 mg, from 1 000 500 to 1 002 500
 */
export function weighedMeanNet(run: WeighedRun): WeighedMeanNet {
  const { nominalMilligrams, minutes, countedPackCount, otherwise } = run;
  refuseDisorder(minutes);
  const weighedPackCount = sumOf(minutes, ({ packCount }) => packCount);
  const unweighedPackCount = Math.max(0, countedPackCount - weighedPackCount);
  if (weighedPackCount === 0) {
    const { meanMilligrams, lowerMilligrams, upperMilligrams } = otherwise;
    return { meanMilligrams, lowerMilligrams, upperMilligrams, weighedPackCount, unweighedPackCount };
  }
  const usualPackCount = weighedPackCount / minutes.length;
  const stretches = stretchesOf(minutes, usualPackCount / 2);
  const lower = nominalMilligrams + Math.min(...stretches.map((one) => (one.error - one.doubt) / one.packCount));
  const upper = nominalMilligrams + Math.max(...stretches.map((one) => (one.error + one.doubt) / one.packCount));
  const share = Math.min(1, unweighedPackCount / usualPackCount);
  const weighedMilligrams =
    weighedPackCount * nominalMilligrams + sumOf(minutes, ({ errorSumMilligrams }) => errorSumMilligrams);
  const allMilligrams = weighedMilligrams + unweighedPackCount * otherwise.meanMilligrams;
  return {
    meanMilligrams: Math.round(allMilligrams / (weighedPackCount + unweighedPackCount)),
    lowerMilligrams: Math.max(0, outward(lower - share * Math.max(0, lower - otherwise.lowerMilligrams), Math.floor)),
    upperMilligrams: outward(upper + share * Math.max(0, otherwise.upperMilligrams - upper), Math.ceil),
    weighedPackCount,
    unweighedPackCount,
  };
}

interface Stretch {
  packCount: number;
  error: number;
  /** Packs times the error of what weighed them. */
  doubt: number;
}

/** Minutes one after the other until they hold so many packs; what is left at the end belongs to the last. */
function stretchesOf(minutes: readonly WeighedMinute[], leastPackCount: number): readonly Stretch[] {
  const stretches: Stretch[] = [];
  for (const { packCount, errorSumMilligrams, weigherErrorMilligrams } of minutes) {
    const last = stretches.at(-1);
    const own = { packCount, error: errorSumMilligrams, doubt: packCount * weigherErrorMilligrams };
    if (last === undefined || last.packCount >= leastPackCount) stretches.push(own);
    else addTo(last, own);
  }
  const [last, before] = [stretches.at(-1), stretches.at(-2)];
  if (last === undefined || before === undefined || last.packCount >= leastPackCount) return stretches;
  addTo(before, last);
  return stretches.slice(0, -1);
}

function addTo(into: Stretch, { packCount, error, doubt }: Stretch): void {
  into.packCount += packCount;
  into.error += error;
  into.doubt += doubt;
}

function outward(milligrams: number, round: (value: number) => number): number {
  return round(milligrams / limitStepMilligrams) * limitStepMilligrams;
}

function sumOf(minutes: readonly WeighedMinute[], of: (minute: WeighedMinute) => number): number {
  return minutes.reduce((sum, minute) => sum + of(minute), 0);
}

function refuseDisorder(minutes: readonly WeighedMinute[]): void {
  minutes.forEach(({ minute, packCount }, place) => {
    if (packCount <= 0) throw new RangeError(`Minute ${minute} holds no packs`);
    if (place > 0 && minute <= (minutes[place - 1]?.minute ?? 0)) throw new RangeError('Minutes must ascend');
  });
}
