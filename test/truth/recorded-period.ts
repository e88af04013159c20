import { seededRandom, type Random } from '../../src/demo/plant-physics/random.js';
import { readScale } from '../../src/demo/plant-physics/scale-reading.js';
import { exactMass, massWithin, type Mass } from '../../src/core/hopper-flow/hopper-event.js';
import type { TimedEvent, TimedHopperPeriod } from '../../src/core/hopper-flow/timed-event.js';
import type { WeighedMeanNet } from '../../src/core/average-quantity/weighed-mean-net.js';
import { netsByWeighers } from './true-weighers.js';
import { countSecond, minuteSeconds, type TruePeriod, type TruePlant, type TrueTip } from './true-plant.js';

/** What people and devices may do less than perfectly without telling anything untrue. */
export type Fault = 'scales' | 'late tips' | 'coder' | 'sparse counts' | 'residues' | 'pack weights';

export const allFaults: readonly Fault[] = ['scales', 'late tips', 'coder', 'sparse counts', 'residues'];

/** The same where each pack is weighed, and limits come from the weights and not from a mean that somebody knows. */
export const faultsOfWeighed: readonly Fault[] = [...allFaults, 'pack weights'];

/** Packs of a line between two counts, or a part of them where a pallet ends. */
export interface Piece {
  readonly id: string;
  readonly line: number;
  readonly fromCount: number;
  readonly toCount: number;
  readonly earliestAt: number;
  readonly latestAt: number;
}

export interface RecordedPeriod extends TimedHopperPeriod<number> {
  readonly pieces: readonly Piece[];
}

/** The sugar that a period starts with, and what it ends with. */
export const [startId, endId] = ['start', 'left inside'];
/** A scan comes so late at most. */
const lateSeconds = 30 * minuteSeconds;
// Limits of error, all invented: a platform scale of 0.5 kg, a small one for tares, a bench scale, a pack weigher's mean.
const bagScale = { intervalGrams: 500, maximumErrorGrams: 1000, biasGrams: 300, spreadGrams: 350 };
const tareScale = { intervalGrams: 20, maximumErrorGrams: 30, biasGrams: -5, spreadGrams: 8 };
const benchLimitGrams = 20;
const [meanBiasGrams, meanLimitGrams] = [1, 3];
const probeLimitGrams = 60_000;

/** Writes down what happened, no better than the faults let it be written, each record with its true limits. */
export function recordPlant(plant: TruePlant, faults: ReadonlySet<Fault>): readonly RecordedPeriod[] {
  const random = seededRandom(plant.seed, 'records');
  const nets = faults.has('pack weights') ? netsByWeighers(plant) : [];
  return plant.periods.map((period) => new Recording(plant, { period, nets }, faults, random).write());
}

class Recording {
  private readonly period: TruePeriod;
  /** By line; none where packs are not weighed one by one. */
  private readonly nets: readonly WeighedMeanNet[];

  constructor(
    private readonly plant: TruePlant,
    of: { readonly period: TruePeriod; readonly nets: readonly WeighedMeanNet[] },
    private readonly faults: ReadonlySet<Fault>,
    private readonly random: Random,
  ) {
    this.period = of.period;
    this.nets = of.nets;
  }

  write(): RecordedPeriod {
    const { startsAt, endsAt, startGrams, endGrams, tips, removals, levels } = this.period;
    const pieces = this.pieces();
    const events: TimedEvent<number>[] = [
      { event: { kind: 'addition', id: startId, mass: this.residue(startGrams) }, ...instant(startsAt) },
      ...this.tipEvents(tips),
      ...pieces.map((piece) => this.pieceEvent(piece)),
      ...removals.map(({ id, at, grams }): TimedEvent<number> => {
        return { event: { kind: 'exit', id, mass: this.benchMass(grams) }, ...instant(at) };
      }),
      ...levels.map(({ at, grams }): TimedEvent<number> => {
        const lowerGrams = Math.max(0, grams - this.random.whole(0, probeLimitGrams));
        const upperGrams = grams + this.random.whole(0, probeLimitGrams);
        return { event: { kind: 'level-seen', id: `probe ${at}`, lowerGrams, upperGrams }, ...instant(at) };
      }),
      { event: { kind: 'exit', id: endId, mass: this.residue(endGrams) }, ...instant(endsAt) },
      { event: { kind: 'level-seen', id: 'proven empty', lowerGrams: 0, upperGrams: 0 }, ...instant(endsAt) },
    ];
    return { capacityGrams: this.plant.capacityGrams, events, pieces };
  }

  /** Somebody looks in and estimates: two fifths too much or too little at worst. */
  private residue(grams: number): Mass {
    if (!this.faults.has('residues')) return exactMass(grams);
    const estimate = Math.round(grams * this.random.between(0.6, 1.4));
    return { lowerGrams: 0, grams: estimate, upperGrams: Math.ceil((estimate + 1) / 0.6) };
  }

  private benchMass(grams: number): Mass {
    if (!this.faults.has('scales')) return exactMass(grams);
    return massWithin(Math.max(0, grams + this.random.whole(-benchLimitGrams, benchLimitGrams)), benchLimitGrams);
  }

  private tipEvents(tips: readonly TrueTip[]): readonly TimedEvent<number>[] {
    const inBatches = this.random.happens(0.5);
    return tips.map(({ bag, grams, openedAt, offAt }) => {
      const event = { kind: 'addition', id: bag, mass: this.bagMass(grams) } as const;
      if (!this.faults.has('late tips')) return { event, earliestAt: openedAt, likelyAt: openedAt, latestAt: offAt };
      const soon = openedAt + this.random.whole(0, lateSeconds);
      const scannedAt = inBatches ? Math.ceil(openedAt / lateSeconds) * lateSeconds : soon;
      return {
        event,
        earliestAt: this.inPeriod(scannedAt - lateSeconds),
        likelyAt: this.inPeriod(scannedAt),
        latestAt: this.inPeriod(Math.max(scannedAt, offAt)),
      };
    });
  }

  /** Whether it was before or after the hopper was proven empty, everybody knows. */
  private inPeriod(at: number): number {
    return Math.min(this.period.endsAt, Math.max(this.period.startsAt, at));
  }

  private bagMass(grams: number): Mass {
    const tareGrams = this.random.whole(1_900, 2_600);
    if (!this.faults.has('scales')) return exactMass(grams);
    const shown = readScale(bagScale, grams + tareGrams, this.random) - readScale(tareScale, tareGrams, this.random);
    return massWithin(shown, bagScale.maximumErrorGrams + tareScale.maximumErrorGrams);
  }

  private pieces(): readonly Piece[] {
    const lines = [...new Set(this.period.cells.map(({ line }) => line))];
    return lines.flatMap((line) => this.piecesOf(line));
  }

  /** A device counts every minute; by hand only where a pallet is full, and before the hopper is opened. */
  private piecesOf(line: number): readonly Piece[] {
    const cells = this.period.cells.filter((cell) => cell.line === line);
    const first = cells[0];
    if (first === undefined) return [];
    const pieces: Piece[] = [];
    let [since, fromCount] = [this.period.startsAt, first.fromCount];
    cells.forEach(({ at, toCount }, place) => {
      const next = cells[place + 1];
      const countedAt = at - (at % minuteSeconds) + countSecond;
      if (next !== undefined && next.at - (next.at % minuteSeconds) < countedAt) return;
      const isPalletFull = this.lastEdge(toCount) > fromCount;
      if (next !== undefined && this.faults.has('sparse counts') && !isPalletFull) return;
      const latestAt = next === undefined && this.faults.has('sparse counts') ? this.period.endsAt : countedAt;
      pieces.push(...this.cut({ id: '', line, fromCount, toCount, earliestAt: since, latestAt }));
      [since, fromCount] = [countedAt, toCount];
    });
    return pieces;
  }

  private lastEdge(count: number): number {
    return count - (count % this.plant.palletPackCount);
  }

  private cut(whole: Piece): readonly Piece[] {
    const pieces: Piece[] = [];
    for (let from = whole.fromCount; from < whole.toCount;) {
      const toCount = Math.min(whole.toCount, this.lastEdge(from) + this.plant.palletPackCount);
      pieces.push({ ...whole, id: `line ${whole.line} from ${from}`, fromCount: from, toCount });
      from = toCount;
    }
    return pieces;
  }

  private pieceEvent({ id, line, fromCount, toCount, earliestAt, latestAt }: Piece): TimedEvent<number> {
    const packCount = toCount - fromCount;
    const net = this.nets[line];
    if (net !== undefined) {
      const mass = massByNet(net, packCount);
      return { event: { kind: 'exit', id, mass }, earliestAt, likelyAt: latestAt, latestAt };
    }
    const stated = this.plant.packGrams + (line === 0 ? meanBiasGrams : -meanBiasGrams);
    const mass = this.faults.has('scales')
      ? massWithin(packCount * stated, packCount * meanLimitGrams)
      : exactMass(this.trueGrams(line, fromCount, toCount));
    return { event: { kind: 'exit', id, mass }, earliestAt, likelyAt: latestAt, latestAt };
  }

  private trueGrams(line: number, fromCount: number, toCount: number): number {
    const cells = this.period.cells.filter(
      (cell) => cell.line === line && cell.fromCount >= fromCount && cell.toCount <= toCount,
    );
    return cells.reduce((sum, { grams }) => sum + grams, 0);
  }
}

/** As the house has it: whole grams, outward. */
function massByNet({ meanMilligrams, lowerMilligrams, upperMilligrams }: WeighedMeanNet, packCount: number): Mass {
  return {
    lowerGrams: Math.floor((packCount * lowerMilligrams) / 1000),
    grams: Math.round((packCount * meanMilligrams) / 1000),
    upperGrams: Math.ceil((packCount * upperMilligrams) / 1000),
  };
}

const instant = (at: number) => ({ earliestAt: at, likelyAt: at, latestAt: at });
