import type { Mass } from '../core/hopper-flow/hopper-event.js';
import { shifted, type Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { parentsOfBins, type AdditionFact } from './addition-facts.js';
import {
  boundEveryBag,
  wholePart,
  type AdditionContent,
  type BagAmounts,
  type BagPart,
  type PeriodContents,
} from './bag-contents.js';
import { periodsOfRuns } from './hopper-period-rows.js';
import { readHopperPeriod, type HopperPeriodFacts } from './hopper-periods.js';
import { exitsOf, layOutPeriod, targetMass, type PeriodTarget } from './period-flow.js';
import { timeUncertaintyAt } from './record-times.js';
import { ruledOutIn, type RuledOutBag } from './ruled-out.js';
import { reworkBinOf, type ReworkBinRow } from './rework-bins.js';
import type { RunRange } from './run-range.js';

/** How far rework of rework is followed; beyond it anything is possible. Our own value, no source. */
const deepestRework = 4;

/** What one question has opened so far: how deep in rework, and until when what was poured counts. */
interface Opened {
  readonly reworkDepth: number;
  /** What surely went in after this cannot be in the bin that is asked for: it was closed by then. Null: all counts. */
  readonly beforeAt: Instant | null;
  /** That bin; it does not hold itself. */
  readonly binId: string | null;
}

/** All that was in a period, as if it were one bag: tips, rework and what it began with. */
export const allOf = (periodId: string): string => `all-of:${periodId}`;

/** The bags that a question is about: of others nothing is worked out. */
export interface AskedBags {
  readonly bagIds: ReadonlySet<string>;
  /** All periods that any of them may have been in; what others left as a residue holds none. Null: not known. */
  readonly periodIds: ReadonlySet<string> | null;
}

const wholeHouse: Opened = { reworkDepth: 0, beforeAt: null, binId: null };

/** Of what is not asked for: nothing of any bag. */
const nothing: AdditionContent = new Map();

/** A target in one period, with what is known of every bag in it. */
export interface AnsweredTarget {
  readonly bags: ReadonlyMap<string, BagAmounts>;
  readonly mass: Mass;
  /** What was in the hopper in the period and can't be in the target; null where the records can't be true. */
  ruledOut(): readonly RuledOutBag[] | null;
}

/**
 * The hopper periods that one question needs, each read once, with what each addition holds: a tip its bag, a residue
 * what the period before may have left of each bag, a rework bin what its parents' packs may hold. Made for one
 * question (or one batch) and thrown away: it knows nothing of what is recorded later.
 */
export class HopperBook {
  private readonly factsById = new Map<string, Promise<HopperPeriodFacts>>();
  private readonly residues = new Map<string, AdditionContent>();
  private readonly bins = new Map<string, AdditionContent>();
  private readonly binsUnderWay = new Set<string>();

  /**
   * @param followedId a period that is followed as a whole besides: what was in it goes on under the name `allOf`
   * @param asked the only bags that are asked about; null: every bag is
   */
  constructor(
    private readonly from: ReadFrom,
    private readonly followedId: string | null = null,
    private readonly asked: AskedBags | null = null,
  ) {}

  facts(periodId: string): Promise<HopperPeriodFacts> {
    const known = this.factsById.get(periodId) ?? readHopperPeriod(this.from, periodId);
    this.factsById.set(periodId, known);
    return known;
  }

  /** The same periods, read once with these, for a question about some bags alone. */
  about(asked: AskedBags): HopperBook {
    const book = new HopperBook(this.from, this.followedId, asked);
    for (const [periodId, facts] of this.factsById) book.factsById.set(periodId, facts);
    return book;
  }

  /** What each addition of a period holds. */
  async contents(periodId: string, opened: Opened = wholeHouse): Promise<PeriodContents> {
    const { additions } = await this.facts(periodId);
    const contents = new Map<string, AdditionContent>();
    for (const addition of additions) {
      // What is asked for is the part of the sugar that was there before: that is a group like any other.
      const isLater = opened.beforeAt !== null && addition.earliestAt >= opened.beforeAt;
      const content = isLater ? nothing : await this.contentOf(addition, opened);
      const isFollowed = periodId === this.followedId && !isLater;
      contents.set(addition.id, isFollowed ? new Map([...content, [allOf(periodId), wholePart]]) : content);
    }
    return contents;
  }

  /** What is known of every bag in targets of one period. */
  async answer(
    periodId: string,
    targets: readonly PeriodTarget[],
    opened: Opened = wholeHouse,
  ): Promise<readonly AnsweredTarget[]> {
    const contents = await this.contents(periodId, opened);
    const flow = layOutPeriod(await this.facts(periodId), targets);
    return targets.map((target) => {
      const exits = exitsOf(flow, target);
      const bags = boundEveryBag(contents, flow, exits);
      return { bags, mass: targetMass(flow, exits), ruledOut: () => ruledOutIn(contents, flow, { exits, bags }) };
    });
  }

  private async contentOf(addition: AdditionFact, opened: Opened): Promise<AdditionContent> {
    if (addition.previousPeriodId !== null) return this.residueContent(addition, addition.previousPeriodId, opened);
    if (addition.binId !== null) return this.binContent(addition, addition.binId, opened);
    const [only] = addition.bagIds;
    if (only !== undefined && addition.bagIds.length === 1) {
      return this.asked?.bagIds.has(only) === false ? nothing : new Map([[only, wholePart]]);
    }
    const part: BagPart = {
      content: { lowerGrams: 0, upperGrams: addition.mass.upperGrams },
      likelyShare: 1 / Math.max(1, addition.bagIds.length),
    };
    return new Map(addition.bagIds.map((bagId) => [bagId, part]));
  }

  /** What a period may have left inside of each bag when it was proven empty. */
  private async residueContent(residue: AdditionFact, periodId: string, opened: Opened): Promise<AdditionContent> {
    if (this.asked?.periodIds?.has(periodId) === false) return nothing;
    const known = this.residues.get(residue.id);
    if (known !== undefined) return known;
    const [answer] = await this.answer(periodId, [{ ranges: [], withEnd: true }], {
      ...opened,
      beforeAt: null,
    });
    const content = partsOf(answer?.bags ?? new Map<string, BagAmounts>(), residue.mass);
    this.residues.set(residue.id, content);
    return content;
  }

  private async binContent(tip: AdditionFact, binId: string, opened: Opened): Promise<AdditionContent> {
    if (binId === opened.binId) return nothing;
    const known = this.bins.get(binId);
    if (known !== undefined) return known;
    if (this.binsUnderWay.has(binId) || opened.reworkDepth >= deepestRework) return this.everyBagOfBin(tip, binId);
    this.binsUnderWay.add(binId);
    try {
      const content = await this.bagsOfBin(tip, await reworkBinOf(this.from, binId), opened);
      this.bins.set(binId, content);
      return content;
    } finally {
      this.binsUnderWay.delete(binId);
    }
  }

  private async bagsOfBin(tip: AdditionFact, bin: ReworkBinRow, opened: Opened): Promise<AdditionContent> {
    const ranges = await parentsOfBins(this.from, [bin.id]);
    const { statedEarlierMinutes } = await timeUncertaintyAt(this.from, bin.siteId, bin.closedAt);
    const beforeAt = shifted(bin.closedAt, statedEarlierMinutes * 60_000);
    const found = await this.answerRanges(
      ranges,
      { removalsOf: bin.content === 'opened-packs' ? [] : ranges.map(({ runId }) => runId) },
      { reworkDepth: opened.reworkDepth + 1, beforeAt, binId: bin.id },
    );
    return partsOfBin(found, { mass: tip.mass, isOfPacks: bin.content === 'opened-packs' });
  }

  /** Where rework leads too far, or back to itself: every bag that its parents can be traced to, in any amount. */
  private async everyBagOfBin(tip: AdditionFact, binId: string): Promise<AdditionContent> {
    const part: BagPart = { content: { lowerGrams: 0, upperGrams: tip.mass.upperGrams }, likelyShare: 0 };
    const bags = new Map<string, BagPart>();
    const seen = new Set<string>();
    const waiting = await this.periodsOfBin(binId);
    for (let periodId = waiting.pop(); periodId !== undefined; periodId = waiting.pop()) {
      if (seen.has(periodId)) continue;
      seen.add(periodId);
      if (periodId === this.followedId) bags.set(allOf(periodId), part);
      for (const addition of (await this.facts(periodId)).additions) {
        for (const bagId of addition.bagIds) bags.set(bagId, part);
        if (addition.previousPeriodId !== null) waiting.push(addition.previousPeriodId);
        if (addition.binId !== null) waiting.push(...(await this.periodsOfBin(addition.binId)));
      }
    }
    return bags;
  }

  private async periodsOfBin(binId: string): Promise<string[]> {
    const parents = await parentsOfBins(this.from, [binId]);
    return (await periodsOfRuns(this.from, [...new Set(parents.map(({ runId }) => runId))])).map((row) => row.periodId);
  }

  private async answerRanges(
    ranges: readonly RunRange[],
    also: Pick<PeriodTarget, 'removalsOf'>,
    opened: Opened,
  ): Promise<readonly AnsweredTarget[]> {
    const periods = await periodsOfRuns(this.from, [...new Set(ranges.map(({ runId }) => runId))]);
    const answers: AnsweredTarget[] = [];
    for (const periodId of new Set(periods.map((row) => row.periodId))) {
      answers.push(...(await this.answer(periodId, [{ ranges, ...also }], opened)));
    }
    return answers;
  }
}

/** What an addition holds of each bag, from what is known of the bags in the exit that it was. */
function partsOf(bags: ReadonlyMap<string, BagAmounts>, mass: Mass): AdditionContent {
  return new Map(
    Array.from(bags, ([bagId, { leastGrams, likelyGrams, mostGrams }]): [string, BagPart] => {
      const upperGrams = Math.min(mostGrams, mass.upperGrams);
      const content = { lowerGrams: Math.min(leastGrams, upperGrams), upperGrams };
      return [bagId, { content, likelyShare: mass.grams === 0 ? 0 : Math.min(1, likelyGrams / mass.grams) }];
    }),
  );
}

/**
 * A bin holds some of its parents' packs, perhaps not all: at least what of a bag cannot be in the packs that are not in
 * it. Rejects were never counted as packs; what may have been in the packs around them may be in them, in any amount.
 */
function partsOfBin(
  answers: readonly AnsweredTarget[],
  bin: { readonly mass: Mass; readonly isOfPacks: boolean },
): AdditionContent {
  const parentsUpperGrams = answers.reduce((sum, { mass }) => sum + mass.upperGrams, 0);
  const parentsGrams = answers.reduce((sum, { mass }) => sum + mass.grams, 0);
  const notInIt = Math.max(0, parentsUpperGrams - bin.mass.lowerGrams);
  const sums = new Map<string, BagAmounts>();
  for (const { bags } of answers) for (const [bagId, amounts] of bags) sums.set(bagId, plus(sums.get(bagId), amounts));
  return new Map(
    Array.from(sums, ([bagId, { leastGrams, likelyGrams, mostGrams }]): [string, BagPart] => {
      const upperGrams = bin.isOfPacks ? Math.min(mostGrams, bin.mass.upperGrams) : bin.mass.upperGrams;
      const lowerGrams = bin.isOfPacks ? Math.min(upperGrams, Math.max(0, leastGrams - notInIt)) : 0;
      const likelyShare = parentsGrams === 0 ? 0 : Math.min(1, likelyGrams / parentsGrams);
      return [bagId, { content: { lowerGrams, upperGrams }, likelyShare }];
    }),
  );
}

/** Amounts of a bag in two places that share nothing. */
export function plus(one: BagAmounts | undefined, other: BagAmounts): BagAmounts {
  return {
    leastGrams: (one?.leastGrams ?? 0) + other.leastGrams,
    likelyGrams: (one?.likelyGrams ?? 0) + other.likelyGrams,
    mostGrams: (one?.mostGrams ?? 0) + other.mostGrams,
  };
}
