import { standardDeviation } from '../statistics/standard-deviation.js';
import { studentTQuantile } from '../statistics/student-t-quantile.js';

/**
 * What a few packs say, the worst first: a pack beyond T2; several beyond T1; one beyond T1; a mean surely below the
 * nominal quantity; a mean below it that so few packs cannot settle; nothing of all that.
 */
export type SampleFinding =
  'beyondT2' | 'severalBeyondT1' | 'oneBeyondT1' | 'meanBelow' | 'meanPerhapsBelow' | 'inOrder';

/** A hand sample as somebody at the line reads it. */
export interface HandSampleReading {
  readonly packCount: number;
  /** Rounded down to whole milligrams: a mean that is short by ever so little never reads as none. */
  readonly meanMilligrams: number;
  readonly smallestMilligrams: number;
  /** The heaviest less the lightest. */
  readonly rangeMilligrams: number;
  /** Of single packs, rounded to whole milligrams. */
  readonly standardDeviationMilligrams: number;
  readonly beyondT1Count: number;
  readonly beyondT2Count: number;
  readonly finding: SampleFinding;
}

/** What a sample is held against; T1 and T2 are null for quantities without a table. */
export interface SampleLimits {
  readonly nominalMilligrams: number;
  readonly t1Milligrams: number | null;
  readonly t2Milligrams: number | null;
}

/** Two-sided 95 %, so 0.975 on one side. Our own choice, no source. */
const oneSidedProbability = 0.975;
const milligramsOfDecigram = 100;

/**
 * Reads packs that were weighed by hand: mean, range, standard deviation, packs beyond T1 and T2, and what that comes
 * to. It advises who stands at the line; it is no test of a law, which has samples of its own (`judgeSample`).
 *
 * A pack exactly at a limit is not beyond it, and a mean exactly at the nominal quantity is not below it. Two packs beyond T1
 * among so few are more than chance would bring. A mean counts as surely below where the 95 % interval of the mean, by
 * Student's t with n − 1 degrees of freedom, lies below the nominal quantity; else it may be chance. These two rules are
 * our own, no source.
 *
 * @param netDecigrams two packs or more, each net in whole decigrams above 0
 * @throws RangeError when there are fewer, or one is not such a number
 * @example readHandSample([20010, 20030, 19990, 20010], limitsOf2Kilograms).finding // 'inOrder'
 */
export function readHandSample(netDecigrams: readonly number[], limits: SampleLimits): HandSampleReading {
  if (netDecigrams.length < 2) throw new RangeError('A hand sample needs two packs or more');
  if (!netDecigrams.every((net) => Number.isSafeInteger(net) && net > 0)) {
    throw new RangeError('Nets must be whole decigrams above 0');
  }
  const nets = netDecigrams.map((net) => net * milligramsOfDecigram);
  const sum = nets.reduce((total, net) => total + net, 0);
  const [smallest, largest] = [Math.min(...nets), Math.max(...nets)];
  const deviation = standardDeviation(nets);
  const belowCount = (limit: number | null): number => (limit === null ? 0 : nets.filter((net) => net < limit).length);
  const [beyondT1Count, beyondT2Count] = [belowCount(limits.t1Milligrams), belowCount(limits.t2Milligrams)];
  const isBelow = sum < limits.nominalMilligrams * nets.length;
  const halfWidth = (studentTQuantile(oneSidedProbability, nets.length - 1) * deviation) / Math.sqrt(nets.length);
  const isSurelyBelow = isBelow && sum / nets.length + halfWidth < limits.nominalMilligrams;
  return {
    packCount: nets.length,
    meanMilligrams: Math.floor(sum / nets.length),
    smallestMilligrams: smallest,
    rangeMilligrams: largest - smallest,
    standardDeviationMilligrams: Math.round(deviation),
    beyondT1Count,
    beyondT2Count,
    finding: findingOf({ beyondT1Count, beyondT2Count, isBelow, isSurelyBelow }),
  };
}

function findingOf(found: {
  readonly beyondT1Count: number;
  readonly beyondT2Count: number;
  readonly isBelow: boolean;
  readonly isSurelyBelow: boolean;
}): SampleFinding {
  if (found.beyondT2Count > 0) return 'beyondT2';
  if (found.beyondT1Count > 1) return 'severalBeyondT1';
  if (found.beyondT1Count === 1) return 'oneBeyondT1';
  if (found.isSurelyBelow) return 'meanBelow';
  return found.isBelow ? 'meanPerhapsBelow' : 'inOrder';
}
