import type { BagRow } from '../drying/bulk-bags.js';
import type { LinkAmounts } from '../hopper/hopper-links.js';
import { groupBy } from '../platform/group-by.js';
import type { ChangedReading } from './changed-readings.js';
import type { RippleSide, SideLot, SidePallet } from './ripple-side.js';
import type {
  AmountsOrNone,
  ChangedBag,
  ChangedDelivery,
  ChangedHold,
  ChangedLot,
  ChangedPallet,
  ChangedSource,
  Ripple,
} from './ripple.js';

interface Both {
  readonly before: RippleSide;
  readonly after: RippleSide;
  /** What bags are called. */
  readonly bagNumbers: ReadonlyMap<string, string>;
}

/** What is changed in nothing but how a printed time is read. */
interface Reread {
  readonly readings: readonly ChangedReading[];
  readonly lots: readonly ChangedLot[];
  readonly pallets: readonly ChangedPallet[];
}

/** What is otherwise on one side than on the other. What is the same on both is left out. */
export function compareSides(both: Both, reread: Reread): Omit<Ripple, 'mark'> {
  const lots = [...changedLots(both), ...reread.lots];
  const pallets = [...changedPallets(both), ...reread.pallets];
  return {
    lots,
    pallets,
    readings: reread.readings,
    deliveries: deliveriesOf(pallets),
    holds: holdsOf(pallets),
    bags: changedBags(both),
    byGrams: [...lots, ...pallets].reduce((most, { byGrams }) => Math.max(most, byGrams), 0),
  };
}

function changedLots(both: Both): readonly ChangedLot[] {
  return idsOf(both, 'lots').flatMap((lotId): ChangedLot[] => {
    const [before, after] = [both.before.lots.get(lotId), both.after.lots.get(lotId)];
    const content = changedContent(both, before, after);
    const [packCountBefore, packCountAfter] = [before?.packCount ?? 0, after?.packCount ?? 0];
    if (content.byGrams === 0 && packCountBefore === packCountAfter) return [];
    return [{ lotId, code: after?.code ?? before?.code ?? '', packCountBefore, packCountAfter, ...content }];
  });
}

function changedPallets(both: Both): readonly ChangedPallet[] {
  const changed = idsOf(both, 'pallets').flatMap((palletId): ChangedPallet[] => {
    const [before, after] = [both.before.pallets.get(palletId), both.after.pallets.get(palletId)];
    const line = after?.line ?? before?.line;
    if (line === undefined) return [];
    const content = changedContent(both, before, after);
    const [heldBefore, heldAfter] = [before?.holds ?? [], after?.holds ?? []];
    const { sscc, status, placeCode, deliveryId, deliveryNumber, customerName } = line;
    const pallet = {
      ...{ palletId, sscc, status, isGone: status === 'dispatched', placeCode, deliveryId, deliveryNumber },
      customerName,
      packsBefore: before?.packs ?? [],
      packsAfter: after?.packs ?? [],
      lotCodesBefore: before?.line.lotCodes ?? [],
      lotCodesAfter: after?.line.lotCodes ?? [],
      filmCodesBefore: before?.filmCodes ?? [],
      filmCodesAfter: after?.filmCodes ?? [],
      heldBy: heldAfter.filter((hold) => !heldBefore.includes(hold)),
      freedOf: heldBefore.filter((hold) => !heldAfter.includes(hold)),
    };
    const isSame =
      content.byGrams === 0 &&
      isSameList(pallet.packsBefore, pallet.packsAfter) &&
      isSameList(pallet.lotCodesBefore, pallet.lotCodesAfter) &&
      isSameList(pallet.filmCodesBefore, pallet.filmCodesAfter) &&
      pallet.heldBy.length + pallet.freedOf.length === 0;
    return isSame ? [] : [{ ...pallet, ...content }];
  });
  return changed.sort((one, other) => Number(other.isGone) - Number(one.isGone) || other.byGrams - one.byGrams);
}

function changedContent(
  { bagNumbers }: Both,
  before: SideLot | SidePallet | undefined,
  after: SideLot | SidePallet | undefined,
): { readonly sources: readonly ChangedSource[]; readonly byGrams: number } {
  const bagIds = new Set([...(before?.sources.keys() ?? []), ...(after?.sources.keys() ?? [])]);
  const sources = [...bagIds].flatMap((bagId): (ChangedSource & { readonly byGrams: number })[] => {
    const [own, now] = [amountsOf(before?.sources.get(bagId)), amountsOf(after?.sources.get(bagId))];
    const byGrams = differenceOf(own, now);
    if (byGrams === 0) return [];
    const bagNumber = bagNumbers.get(bagId) ?? '';
    return [{ bagId, bagNumber, before: own, after: now, byGrams }];
  });
  sources.sort((one, other) => other.byGrams - one.byGrams || (one.bagNumber < other.bagNumber ? -1 : 1));
  return {
    sources: sources.map(({ bagId, bagNumber, before: own, after: now }) => ({
      ...{ bagId, bagNumber, before: own, after: now },
    })),
    byGrams: sources[0]?.byGrams ?? 0,
  };
}

function amountsOf(link: LinkAmounts | undefined): AmountsOrNone {
  if (link === undefined || link.word === 'ruled-out') return null;
  const { leastGrams, likelyGrams, mostGrams, word } = link;
  return { leastGrams, likelyGrams, mostGrams, word };
}

const nothing = { leastGrams: 0, likelyGrams: 0, mostGrams: 0 };

function differenceOf(before: AmountsOrNone, after: AmountsOrNone): number {
  const [one, other] = [before ?? nothing, after ?? nothing];
  return Math.max(
    Math.abs(one.leastGrams - other.leastGrams),
    Math.abs(one.likelyGrams - other.likelyGrams),
    Math.abs(one.mostGrams - other.mostGrams),
  );
}

function deliveriesOf(pallets: readonly ChangedPallet[]): readonly ChangedDelivery[] {
  const loaded = groupBy(pallets, ({ deliveryId }) => deliveryId);
  return [...loaded].flatMap(([deliveryId, own]): ChangedDelivery[] => {
    const [first] = own;
    if (deliveryId === null || first === undefined) return [];
    const [number, customerName] = [first.deliveryNumber ?? '', first.customerName ?? ''];
    return [{ deliveryId, number, customerName, isGone: first.isGone, palletCount: own.length }];
  });
}

function holdsOf(pallets: readonly ChangedPallet[]): readonly ChangedHold[] {
  const numbers = [...new Set(pallets.flatMap(({ heldBy, freedOf }) => [...heldBy, ...freedOf]))].sort();
  const ssccs = (key: 'heldBy' | 'freedOf', number: string): string[] =>
    pallets.filter((pallet) => pallet[key].includes(number)).map(({ sscc }) => sscc);
  return numbers.map((number) => ({ number, reaches: ssccs('heldBy', number), leaves: ssccs('freedOf', number) }));
}

function changedBags(both: Both): readonly ChangedBag[] {
  return idsOf(both, 'bags').flatMap((bagId): ChangedBag[] => {
    const [before, after] = [both.before.bags.get(bagId), both.after.bags.get(bagId)];
    const [stood, stands] = [stateOf(before), stateOf(after)];
    if (stood.status === stands.status && stood.remainingGrams === stands.remainingGrams) return [];
    const number = after?.number ?? before?.number ?? '';
    return [
      {
        ...{ bagId, number, statusBefore: stood.status, statusAfter: stands.status },
        ...{ remainingGramsBefore: stood.remainingGrams, remainingGramsAfter: stands.remainingGrams },
      },
    ];
  });
}

function stateOf(bag: BagRow | undefined) {
  return { status: bag?.status ?? null, remainingGrams: bag?.remainingGrams ?? 0 };
}

function idsOf({ before, after }: Both, key: 'lots' | 'pallets' | 'bags'): readonly string[] {
  return [...new Set([...before[key].keys(), ...after[key].keys()])].sort();
}

function isSameList(one: readonly string[], other: readonly string[]): boolean {
  return one.length === other.length && one.every((text, place) => text === other[place]);
}
