import { shifted } from '../platform/clock.js';

/** What a sample stands for: one bag, or a dryer's bags whose filling ended from `fromAt` up to before `untilAt`. */
export interface SampleCover {
  readonly bagId: string | null;
  readonly dryerId: string | null;
  readonly fromAt: string | null;
  readonly untilAt: string | null;
}

/** What of a bag says which samples stand for it. */
export interface CoveredBag {
  readonly id: string;
  readonly dryerId: string | null;
  /** Null while the bag is not closed: then only a sample of its own stands for it. */
  readonly filledAt: string | null;
}

/** The longest that a sample may stand for: a shift of twelve hours over a clock change, and some room. */
const longestCoverMilliseconds = 26 * 3_600_000;

/** When the first and the last of the closed bags of each dryer were filled. */
export interface DryerBags {
  readonly dryerId: string;
  /** No sample that began before this stands for any of them. */
  readonly earliestFromAt: string;
  readonly lastFilledAt: string;
}

/** Between what times samples of hours and shifts may have begun that stand for some of these bags, dryer by dryer. */
export function dryerBagsOf(bags: readonly CoveredBag[]): readonly DryerBags[] {
  const dryerIds = [...new Set(bags.flatMap(({ dryerId }) => dryerId ?? []))];
  return dryerIds.flatMap((dryerId) => {
    const filledAts = bags.flatMap((bag) => (bag.dryerId === dryerId ? (bag.filledAt ?? []) : [])).sort();
    const [first, lastFilledAt] = [filledAts.at(0), filledAts.at(-1)];
    if (first === undefined || lastFilledAt === undefined) return [];
    return [{ dryerId, earliestFromAt: shifted(first, -longestCoverMilliseconds), lastFilledAt }];
  });
}

/** Whether a sample stands for a bag. The interval is half-open: a bag filled exactly at its end belongs to the next. */
export function coversBag(sample: SampleCover, bag: CoveredBag): boolean {
  if (sample.bagId !== null) return sample.bagId === bag.id;
  if (sample.fromAt === null || sample.untilAt === null || bag.filledAt === null) return false;
  return sample.dryerId === bag.dryerId && sample.fromAt <= bag.filledAt && bag.filledAt < sample.untilAt;
}
