import {
  weighedMeanNet,
  type WeighedMeanNet,
  type WeighedMinute,
} from '../../src/core/average-quantity/weighed-mean-net.js';
import { seededRandom, type Random } from '../../src/demo/plant-physics/random.js';
import { minuteSeconds, type TrueCell, type TruePlant } from './true-plant.js';

// All invented: what a weigher may be off by, how far packs lie from their neighbours, what a format is taken to hold.
const weigherErrorMilligrams = 1000;
const [spreadMilligrams, stepMilligrams] = [3000, 200];
const [assumedBelowMilligrams, assumedAboveMilligrams] = [8000, 8000];
/** A weigher now and then misses a pack, and some are silent for a while. */
const [missedShare, silentShare, silentMinutes] = [0.0002, 0.3, 12];

/** What the house says of each line's packs by the weights that its weigher sent. */
export function netsByWeighers(plant: TruePlant): readonly WeighedMeanNet[] {
  const cells = plant.periods.flatMap((period) => period.cells);
  const lines = [...new Set(cells.map(({ line }) => line))].sort();
  const nominalMilligrams = plant.packGrams * 1000;
  return lines.map((line) => {
    const own = cells.filter((cell) => cell.line === line);
    return weighedMeanNet({
      nominalMilligrams,
      minutes: weighedMinutes(plant, own, seededRandom(plant.seed, `weigher ${line}`)),
      countedPackCount: own.reduce((sum, { fromCount, toCount }) => sum + toCount - fromCount, 0),
      otherwise: {
        meanMilligrams: nominalMilligrams,
        lowerMilligrams: nominalMilligrams - assumedBelowMilligrams,
        upperMilligrams: nominalMilligrams + assumedAboveMilligrams,
      },
    });
  });
}

/**
 * The packs of each minute of the weigher's clock, as off as it may be: always by as much, at worst by all that is
 * permitted. Its minutes begin somewhere within those of the counts.
 */
function weighedMinutes(plant: TruePlant, cells: readonly TrueCell[], random: Random): readonly WeighedMinute[] {
  const off = random.pick([-1, -1, 0.4, 1, 1]) * weigherErrorMilligrams;
  const secondsAhead = random.whole(0, minuteSeconds - 1);
  const lastMinute = Math.floor((cells.at(-1)?.at ?? 0) / minuteSeconds);
  const silentFrom = random.happens(silentShare) ? random.whole(0, lastMinute) : Infinity;
  const minutes = new Map<number, { packCount: number; errorSumMilligrams: number }>();
  for (const cell of cells) {
    const errors = errorsOf(plant, cell, random);
    errors.forEach((error, place) => {
      // The packs of a minute come one after the other, from the minute's begin to its end.
      const second = cell.at - (cell.at % minuteSeconds) + (place / errors.length) * minuteSeconds + secondsAhead;
      const minute = Math.floor(second / minuteSeconds);
      if (random.happens(missedShare) || (minute >= silentFrom && minute < silentFrom + silentMinutes)) return;
      const sum = minutes.get(minute) ?? { packCount: 0, errorSumMilligrams: 0 };
      sum.packCount += 1;
      sum.errorSumMilligrams += Math.round((error + off) / stepMilligrams) * stepMilligrams;
      minutes.set(minute, sum);
    });
  }
  return [...minutes]
    .sort(([one], [other]) => one - other)
    .map(([minute, sum]) => ({ minute, ...sum, weigherErrorMilligrams }));
}

/** How far each pack of a cell truly is from the nominal quantity: it varies, and the cell holds what it holds. */
function errorsOf(plant: TruePlant, { fromCount, toCount, grams }: TrueCell, random: Random): readonly number[] {
  const packCount = toCount - fromCount;
  const errors = Array.from({ length: packCount }, () => random.normal(0, spreadMilligrams));
  const mean = errors.reduce((sum, error) => sum + error, 0) / packCount;
  const trueMean = (grams * 1000) / packCount - plant.packGrams * 1000;
  return errors.map((error) => error - mean + trueMean);
}
