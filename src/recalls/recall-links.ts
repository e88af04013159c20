import { bagsOf } from '../drying/bulk-bags.js';
import { meanNetsOf, type RunMeanNet } from '../fill-weight/mean-nets.js';
import { sourcesOfTargets } from '../hopper/hopper-links.js';
import { tipsOfBag } from '../hopper/tips.js';
import { clipped, packsIn, type RunRange } from '../packing/run-ranges.js';
import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { groupBy } from '../platform/group-by.js';
import type { Amounts, PackedPart } from '../tracing/thread.js';
import type { RecallFigures } from './recall-figures.js';
import type { RecalledUnit } from './recall-units.js';

/** One step of the way from a bag to a customer: what went from where to where, and the record that shows it. */
export interface RecallLink extends Amounts {
  readonly step: 'bag-run' | 'run-lot' | 'lot-pallet' | 'unit-delivery' | 'delivery-customer';
  readonly parent: string;
  readonly child: string;
  readonly at: Instant | null;
  readonly record: string;
}

type Means = ReadonlyMap<string, RunMeanNet>;

/** Every link of a recall, from the bags to the customers. */
export async function linksOfRecall(from: ReadFrom, figures: RecallFigures): Promise<readonly RecallLink[]> {
  const { parts, units, reach } = figures;
  const means = await meanNetsOf(from, [...new Set(reach.ranges.map(({ runId }) => runId))]);
  return [
    ...(await bagLinks(from, reach.ranges, parts)),
    ...parts.map((part) => lotLink(part, means)),
    ...units.flatMap((unit) => palletLinks(unit, parts, means)),
    ...deliveryLinks(units, means),
  ];
}

/** The bags that the packs of each run may hold sugar of, with the tip that brought it. */
async function bagLinks(
  from: ReadFrom,
  ranges: readonly RunRange[],
  parts: readonly PackedPart[],
): Promise<readonly RecallLink[]> {
  const byRun = [...groupBy(ranges, ({ runId }) => runId)];
  const found = await sourcesOfTargets(
    from,
    byRun.map(([, own]) => ({ ranges: own })),
  );
  const bagIds = [...new Set(found.flat().map(({ bagId }) => bagId))];
  const bags = new Map((await bagsOf(from, bagIds)).map((bag) => [bag.id, bag]));
  const tips = new Map<string, Awaited<ReturnType<typeof tipsOfBag>>>();
  for (const bagId of bagIds) tips.set(bagId, await tipsOfBag(from, bagId));
  return byRun.flatMap(([runId], place) =>
    (found[place] ?? []).map(({ bagId, periodId, word, ...amounts }): RecallLink => {
      const own = tips.get(bagId) ?? [];
      const tip = own.find((one) => one.periodId === periodId) ?? own[0];
      const child = parts.find((part) => part.runId === runId)?.runNumber ?? runId;
      const { leastGrams, likelyGrams, mostGrams } = amounts;
      return {
        ...{
          step: 'bag-run',
          parent: bags.get(bagId)?.number ?? bagId,
          child,
          leastGrams,
          likelyGrams,
          mostGrams,
          word,
        },
        ...{ at: tip?.openedAt ?? null, record: tip?.id ?? periodId },
      };
    }),
  );
}

function lotLink(part: PackedPart, means: Means): RecallLink {
  return {
    ...{ step: 'run-lot', parent: part.runNumber, child: part.lotCode ?? '', at: part.when?.fromAt ?? null },
    ...gramsOf([part], means, true),
    record: `${part.runNumber} ${part.fromCount}-${part.toCount}`,
  };
}

function palletLinks(unit: RecalledUnit, parts: readonly PackedPart[], means: Means): readonly RecallLink[] {
  return parts.flatMap((part): readonly RecallLink[] => {
    const shared = unit.ranges.flatMap((range) => clipped(range, part) ?? []);
    if (shared.length === 0) return [];
    const amounts = gramsOf(shared, means, unit.isCertain);
    const parent = part.lotCode ?? part.runNumber;
    return [{ step: 'lot-pallet', parent, child: unit.name, at: unit.madeAt, ...amounts, record: unit.name }];
  });
}

function deliveryLinks(units: readonly RecalledUnit[], means: Means): readonly RecallLink[] {
  const links: RecallLink[] = [];
  for (const [, own] of groupBy(units, ({ delivery }) => delivery?.id ?? null)) {
    const delivery = own[0]?.delivery ?? null;
    if (delivery === null) continue;
    const number = delivery.noteNumber ?? delivery.orderNumber;
    const steps = own.map((unit): RecallLink => {
      const amounts = unit.kind === 'pallet' ? gramsOf(unit.ranges, means, unit.isCertain) : bagGrams(unit.bagGrams);
      return {
        step: 'unit-delivery',
        parent: unit.name,
        child: number,
        at: delivery.leftAt,
        ...amounts,
        record: number,
      };
    });
    const sum = (of: (link: RecallLink) => number): number => steps.reduce((total, link) => total + of(link), 0);
    const leastGrams = sum((link) => link.leastGrams);
    links.push(...steps, {
      ...{ step: 'delivery-customer', parent: number, child: delivery.customerCode, at: delivery.leftAt },
      ...{ leastGrams, likelyGrams: sum((link) => link.likelyGrams), mostGrams: sum((link) => link.mostGrams) },
      ...{ word: leastGrams > 0 ? 'sure' : 'possible', record: number },
    });
  }
  return links;
}

/** Packs by the limits and the mean of their run; nothing is sure of packs that nobody saw move. */
function gramsOf(ranges: readonly RunRange[], means: Means, isCertain: boolean): Amounts {
  const sum = (of: (mean: RunMeanNet) => number): number =>
    ranges.reduce((total, range) => {
      const mean = means.get(range.runId);
      return total + (mean === undefined ? 0 : packsIn([range]) * of(mean));
    }, 0);
  return {
    leastGrams: isCertain ? Math.floor(sum((mean) => mean.lowerMilligrams) / 1000) : 0,
    likelyGrams: Math.round(sum((mean) => mean.meanMilligrams) / 1000),
    mostGrams: Math.ceil(sum((mean) => mean.upperMilligrams) / 1000),
    word: isCertain ? 'sure' : 'possible',
  };
}

function bagGrams(grams: number): Amounts {
  return { leastGrams: grams, likelyGrams: grams, mostGrams: grams, word: 'sure' };
}
