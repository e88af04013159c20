import { groupBy } from '../platform/group-by.js';
import { coversBag, type CoveredBag, type SampleCover } from './sample-cover.js';

interface WithCover {
  readonly cover: SampleCover;
}

/** Samples of one dryer by when they begin, each with the latest end of it and of all before. */
interface SamplesOfDryer<Sample> {
  readonly samples: readonly Sample[];
  readonly latestUntilAt: readonly string[];
}

/** Finds the samples that stand for a bag among hundreds, for hundreds of bags. */
export class SamplesNear<Sample extends WithCover> {
  private readonly byBag: ReadonlyMap<string, readonly Sample[]>;
  private readonly byDryer: ReadonlyMap<string, SamplesOfDryer<Sample>>;

  constructor(samples: readonly Sample[]) {
    this.byBag = groupBy(samples, ({ cover }) => cover.bagId ?? '');
    const timed = samples.filter(({ cover }) => cover.bagId === null);
    this.byDryer = new Map(
      [...groupBy(timed, ({ cover }) => cover.dryerId ?? '')].map(([dryerId, own]) => [dryerId, inOrder(own)]),
    );
  }

  /** All that stand for a bag, in no order. */
  of(bag: CoveredBag): readonly Sample[] {
    return [...(this.byBag.get(bag.id) ?? []), ...this.ofDryer(bag)];
  }

  private ofDryer(bag: CoveredBag): readonly Sample[] {
    const { dryerId, filledAt } = bag;
    const known = dryerId === null || filledAt === null ? undefined : this.byDryer.get(dryerId);
    if (known === undefined || filledAt === null) return [];
    const { samples, latestUntilAt } = known;
    const found: Sample[] = [];
    // From the last that began by then back to where all before had ended.
    for (let place = countBegunBy(samples, filledAt) - 1; place >= 0; place -= 1) {
      if ((latestUntilAt[place] ?? '') <= filledAt) break;
      const sample = samples[place];
      if (sample !== undefined && coversBag(sample.cover, bag)) found.push(sample);
    }
    return found;
  }
}

function inOrder<Sample extends WithCover>(unordered: readonly Sample[]): SamplesOfDryer<Sample> {
  const samples = unordered.toSorted((one, other) => (begin(one) < begin(other) ? -1 : 1));
  let latest = '';
  const latestUntilAt = samples.map(({ cover: { untilAt } }) => {
    if (untilAt !== null && untilAt > latest) latest = untilAt;
    return latest;
  });
  return { samples, latestUntilAt };
}

const begin = ({ cover }: WithCover): string => cover.fromAt ?? '';

/** How many samples, in the order of their begin, had begun by an instant. */
function countBegunBy(samples: readonly WithCover[], at: string): number {
  let [low, high] = [0, samples.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    const sample = samples[middle];
    if (sample !== undefined && begin(sample) <= at) low = middle + 1;
    else high = middle;
  }
  return low;
}
