import { deliveriesOf, type DeliveryRow } from '../dispatch/deliveries.js';
import { meanNetsOf } from '../fill-weight/mean-nets.js';
import type { GroupReach } from '../hopper/group-reach.js';
import { ruledOut } from '../hopper/link-words.js';
import type { RunCounts } from '../packing/packing-run-rows.js';
import { contentsOf, palletsOfRanges } from '../pallets/pallet-list.js';
import type { ContentRow, PalletOfRange } from '../pallets/pallet-rows.js';
import { spreadsOf } from '../pallets/pallet-spread.js';
import { palletsInShort, type PalletInShort } from '../pallets/pallets-in-short.js';
import { placeOf } from '../plant/plant-facts.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { groupBy } from '../platform/group-by.js';
import { overlaps, packsIn, type RunRange } from '../packing/run-ranges.js';
import type { CustomerLine, PalletLine } from './thread.js';

/** The pallets that may hold sugar of a group of bags, the surest first; those with the subject's own packs are marked. */
export async function palletLines(
  from: ReadFrom,
  reach: GroupReach,
  subject: readonly RunRange[],
): Promise<PalletLine[]> {
  const whole = reach.runIds.map((runId) => ({ runId, fromCount: 0, toCount: null }));
  const placed = groupBy(await palletsOfRanges(from, whole), (row) => row.palletId);
  const palletIds = [...placed.keys()];
  const spreads = await spreadsOf(from, palletIds);
  const targets = palletIds.map((palletId) => {
    const { possible = [], certain = [] } = spreads.get(palletId) ?? {};
    return { ranges: possible, certain };
  });
  const bounds = await reach.boundIn(targets);
  const kept: KeptPallet[] = [];
  palletIds.forEach((palletId, place) => {
    const { leastGrams, likelyGrams, mostGrams, word } = bounds[place] ?? ruledOut;
    if (word === 'ruled-out') return;
    const { ranges = [] } = targets[place] ?? {};
    const isSubject = ranges.some((range) => subject.some((one) => overlaps(range, one)));
    kept.push({ palletId, leastGrams, likelyGrams, mostGrams, word, isSubject });
  });
  return linesOfPallets(from, kept, new Map([...spreads].map(([palletId, { contents }]) => [palletId, contents])));
}

/** The pallets that packs of these ranges stand on, or may: found by counts alone, with the sugar of those packs by their mean. */
export async function palletLinesOfPacks(from: ReadFrom, ranges: readonly RunCounts[]): Promise<PalletLine[]> {
  const placed = groupBy(await palletsOfRanges(from, ranges), (row) => row.palletId);
  const means = await meanNetsOf(from, [
    ...new Set([...placed.values()].flatMap((own) => own.map((row) => row.runId))),
  ]);
  const gramsOf = (rows: readonly PalletOfRange[], side: 'lower' | 'mean' | 'upper'): number => {
    const milligrams = rows.reduce(
      (sum, row) => sum + packsIn([row]) * (means.get(row.runId)?.[`${side}Milligrams`] ?? 0),
      0,
    );
    return Math.round(milligrams / 1000);
  };
  const kept = [...placed].map(([palletId, rows]) => {
    const isCertain = rows.every((row) => row.isCertain);
    const [leastGrams, likelyGrams, mostGrams] = [
      isCertain ? gramsOf(rows, 'lower') : 0,
      gramsOf(rows, 'mean'),
      gramsOf(rows, 'upper'),
    ];
    return {
      palletId,
      leastGrams,
      likelyGrams,
      mostGrams,
      word: isCertain ? ('sure' as const) : ('possible' as const),
      isSubject: true,
    };
  });
  return linesOfPallets(from, kept);
}

type KeptPallet = Pick<PalletLine, 'palletId' | 'leastGrams' | 'likelyGrams' | 'mostGrams' | 'word' | 'isSubject'>;

/** What people know pallets by, and where they are; the surest first. */
export async function linesOfPallets(
  from: ReadFrom,
  kept: readonly KeptPallet[],
  known: ReadonlyMap<string, readonly ContentRow[]> | null = null,
): Promise<PalletLine[]> {
  const palletIds = kept.map((line) => line.palletId);
  const contents = known ?? (await contentsByPallet(from, palletIds));
  const pallets = await palletsInShort(from, palletIds, contents);
  const places = await placesOf(from, [...pallets.values()]);
  const lines = kept.flatMap((line): PalletLine[] => {
    const pallet = pallets.get(line.palletId);
    if (pallet === undefined) return [];
    const place = places.get(pallet.placeId ?? '') ?? nowhere;
    return [lineOf(line, { pallet, place, contents: contents.get(line.palletId) ?? [] })];
  });
  return lines.sort(
    (a, b) => Number(b.isSubject) - Number(a.isSubject) || b.leastGrams - a.leastGrams || b.likelyGrams - a.likelyGrams,
  );
}

async function contentsByPallet(from: ReadFrom, palletIds: readonly string[]): Promise<Map<string, ContentRow[]>> {
  return groupBy(await contentsOf(from, palletIds), (row) => row.palletId);
}

interface PalletFacts {
  readonly pallet: PalletInShort;
  readonly place: Whereabouts;
  readonly contents: readonly ContentRow[];
}

/** Field by field: a hold reaches hundreds of pallets, and spreads take several times as long. */
function lineOf(line: KeptPallet, { pallet, place, contents }: PalletFacts): PalletLine {
  const lotCodes = contents.map(({ lotCode }) => lotCode);
  return {
    leastGrams: line.leastGrams,
    likelyGrams: line.likelyGrams,
    mostGrams: line.mostGrams,
    word: line.word,
    isSubject: line.isSubject,
    palletId: pallet.id,
    sscc: pallet.sscc,
    formatName: pallet.formatName,
    packCount: pallet.packCount,
    status: pallet.status,
    lotCodes: lotCodes.length < 2 ? lotCodes : [...new Set(lotCodes)],
    placeCode: place.placeCode,
    deliveryId: place.deliveryId,
    deliveryNumber: place.deliveryNumber,
    customerId: place.customerId,
    customerName: place.customerName,
  };
}

type Whereabouts = Pick<PalletLine, 'placeCode' | 'deliveryId' | 'deliveryNumber' | 'customerId' | 'customerName'>;

/** Where pallets are, by the ids of their places: store places, and the deliveries that they are on or went with. */
async function placesOf(from: ReadFrom, pallets: readonly PalletInShort[]): Promise<ReadonlyMap<string, Whereabouts>> {
  const places = new Map<string, Whereabouts>();
  const deliveryIds: string[] = [];
  for (const { status, placeId } of pallets) {
    if (placeId === null || status === 'taken-apart') continue;
    if (status === 'loaded' || status === 'dispatched') deliveryIds.push(placeId);
    else if (!places.has(placeId)) places.set(placeId, { ...nowhere, placeCode: (await placeOf(from, placeId)).code });
  }
  for (const delivery of (await deliveriesOf(from, deliveryIds)).values()) {
    places.set(delivery.id, ofDelivery(delivery));
  }
  return places;
}

const nowhere: Whereabouts = {
  placeCode: null,
  deliveryId: null,
  deliveryNumber: null,
  customerId: null,
  customerName: null,
};

function ofDelivery(delivery: DeliveryRow): Whereabouts {
  return {
    placeCode: null,
    deliveryId: delivery.id,
    deliveryNumber: delivery.noteNumber ?? delivery.orderNumber,
    customerId: delivery.customerId,
    customerName: delivery.customerName ?? delivery.customerCode,
  };
}

/** A bag that went to a customer whole. */
export interface SoldBag {
  readonly customerId: string;
  readonly customerName: string;
  readonly deliveryNumber: string;
}

/** The customers of pallets that have left, and of bags sold whole, with how much each got. */
export function customersOf(pallets: readonly PalletLine[], bags: readonly SoldBag[]): CustomerLine[] {
  const away = pallets.filter((pallet) => pallet.status === 'dispatched' && pallet.customerId !== null);
  const shares = [
    ...away.map((pallet) => ({
      customerId: pallet.customerId ?? '',
      customerName: pallet.customerName ?? '',
      deliveryNumber: pallet.deliveryNumber ?? '',
      palletCount: 1,
      packCount: pallet.packCount,
      bagCount: 0,
    })),
    ...bags.map((bag) => ({ ...bag, palletCount: 0, packCount: 0, bagCount: 1 })),
  ];
  const sum = (numbers: readonly number[]): number => numbers.reduce((total, one) => total + one, 0);
  return [...groupBy(shares, (share) => share.customerId).values()].map((own) => ({
    customerId: own[0]?.customerId ?? '',
    customerName: own[0]?.customerName ?? '',
    deliveryNumbers: [...new Set(own.map((share) => share.deliveryNumber))].sort(),
    palletCount: sum(own.map((share) => share.palletCount)),
    packCount: sum(own.map((share) => share.packCount)),
    bagCount: sum(own.map((share) => share.bagCount)),
  }));
}
