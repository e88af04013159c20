import { sourcesOfRanges } from '../hopper/hopper-links.js';
import { axesOfRanges, type AxisSpan, type PeriodAxis } from '../hopper/period-axis.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { isOfBags } from './read-thread.js';
import { rangesOfSubject, type SubjectRanges } from './subject-ranges.js';
import type { Amounts, SourceLine, Thread } from './thread.js';

/** A bag that may be in the packs, where it was tipped in one hopper period, and how much of it may be in them. */
export interface RibbonBag extends Amounts {
  readonly bagId: string;
  readonly name: string;
  /** Where it lies on the axis of what went in; none where it came with rework or with what was left. */
  readonly spans: readonly AxisSpan[];
}

/** One hopper period as a picture of ribbons is drawn from. */
export interface Ribbons extends PeriodAxis {
  readonly bags: readonly RibbonBag[];
}

/** The same of a thread; nothing for what is a bag itself. */
export async function ribbonsOfThread(
  from: ReadFrom,
  siteId: string,
  { subject, sources }: Pick<Thread, 'subject' | 'sources'>,
): Promise<readonly Ribbons[]> {
  if (isOfBags(subject)) return [];
  return ribbonsOf(from, await rangesOfSubject(from, siteId, subject), sources);
}

type Source = Pick<SourceLine, 'bagId' | 'bagNumber' | keyof Amounts>;

/**
 * What the ribbons of some packs are drawn from, one picture a hopper period. The amounts are those of the sources; only of
 * a bag that was tipped in two of the periods they are asked for again, period by period.
 */
export async function ribbonsOf(
  from: ReadFrom,
  ranges: SubjectRanges,
  sources: readonly Source[],
): Promise<readonly Ribbons[]> {
  const axes = await axesOfRanges(from, ranges.possible);
  const own = axes.map((axis) => ({ axis, spans: spansByBag(axis) }));
  const byPeriod = own.length === 1 ? null : await amountsByPeriod(from, ranges);
  return own.map(({ axis, spans }) => ({
    ...axis,
    bags: sources.flatMap((source): readonly RibbonBag[] => {
      const amounts = byPeriod === null ? source : byPeriod.get(`${axis.periodId} ${source.bagId}`);
      if (amounts === undefined) return [];
      const { leastGrams, likelyGrams, mostGrams, word } = amounts;
      const { bagId, bagNumber: name } = source;
      return [{ bagId, name, spans: spans.get(bagId) ?? [], leastGrams, likelyGrams, mostGrams, word }];
    }),
  }));
}

async function amountsByPeriod(
  from: ReadFrom,
  { possible, certain }: SubjectRanges,
): Promise<ReadonlyMap<string, Amounts>> {
  const found = new Map<string, Amounts>();
  for (const link of await sourcesOfRanges(from, possible, { certain })) {
    found.set(`${link.periodId} ${link.bagId}`, link);
  }
  return found;
}

function spansByBag({ additions }: PeriodAxis): ReadonlyMap<string, readonly AxisSpan[]> {
  const spans = new Map<string, AxisSpan[]>();
  for (const { bagIds, fromGrams, toGrams } of additions) {
    for (const bagId of bagIds) spans.set(bagId, [...(spans.get(bagId) ?? []), { fromGrams, toGrams }]);
  }
  return spans;
}
