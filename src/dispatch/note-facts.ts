import { bagsOf, type BagRow } from '../drying/bulk-bags.js';
import { standingsOf } from '../disposition/standings.js';
import { bestBeforeOfLot } from '../packing/lot-dates.js';
import { contentsOf, palletsOf } from '../pallets/pallet-list.js';
import { computedGrossGrams, type ContentRow, type PalletRow } from '../pallets/pallet-rows.js';
import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { printedTime } from '../platform/printing/printed-figures.js';
import { paperLanguageFor } from '../plant/paper-languages.js';
import { customerOf, gradeOf, scaleStandingAt, siteOf } from '../plant/plant-facts.js';
import { packsIn } from '../packing/run-ranges.js';
import { loadedOn } from './deliveries.js';
import type { DeliveryNoteFacts, NoteBag, NoteBagGroup, NoteLot, NoteProduct } from './delivery-note.facts.js';
import type { DeliveryRow, VehicleCheckRow } from './delivery-rows.js';
import { progressOf } from './line-progress.js';

/** What the note takes from the close itself. */
export interface NoteDraft {
  readonly delivery: DeliveryRow;
  readonly check: VehicleCheckRow;
  readonly number: string;
  readonly version: number;
  readonly replaces: string | null;
  readonly seal: string;
  readonly shortCode: string | null;
  readonly shortReason: string | null;
  readonly remarks: string | null;
  readonly closedAt: Instant;
}

/** Everything that the note says, from what is on the vehicle. */
export async function noteFacts(tx: Tx, draft: NoteDraft): Promise<DeliveryNoteFacts> {
  const { delivery, check, number, version, replaces, seal, shortCode, shortReason, remarks } = draft;
  const site = await siteOf(tx, delivery.siteId);
  const language = await paperLanguageFor(tx, delivery.customerId);
  const { code, gln, name, address } = await customerOf(tx, delivery.customerId);
  const loaded = await loadedOn(tx, delivery.id);
  const pallets = await palletsOf(
    tx,
    loaded.flatMap((row) => row.palletId ?? []),
  );
  const bags = await bagsOf(
    tx,
    loaded.flatMap((row) => row.bagId ?? []),
  );
  const products = await productsOf(tx, pallets);
  const bagGroups = await bagGroupsOf(tx, bags, draft.closedAt);
  const progress = await progressOf(tx, delivery.id);
  return {
    language,
    number,
    version,
    replaces,
    sender: { name: site.name, gln: site.gln },
    customer: { code, gln, name, address },
    orderNumber: delivery.orderNumber,
    plannedOn: delivery.plannedOn,
    leftAtLocal: printedTime(draft.closedAt, site.timeZone, language),
    vehicle: {
      registration: check.registration,
      haulierCode: check.haulierCode,
      checkedAtLocal: printedTime(check.checkedAt, site.timeZone, language),
    },
    seal,
    products,
    bagGroups,
    totals: totalsOf(pallets, bags),
    short: progress
      .filter((line) => line.leftCount > 0)
      .map((line) => ({ name: line.name, ordered: line.orderedCount, loaded: line.loadedCount })),
    shortCode,
    shortReason,
    remarks,
  };
}

function totalsOf(pallets: readonly PalletRow[], bags: readonly BagRow[]): DeliveryNoteFacts['totals'] {
  const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
  return {
    palletCount: pallets.length,
    bagCount: bags.length,
    packCount: sum(pallets.map((pallet) => pallet.packCount)),
    netGrams:
      sum(pallets.map((pallet) => pallet.packCount * pallet.nominalGrams)) + sum(bags.map((bag) => bag.netGrams ?? 0)),
    grossGrams: sum(pallets.map(computedGrossGrams)) + sum(bags.map((bag) => bag.grossGrams ?? 0)),
  };
}

/** By product, then by lot, then the pallets in the order of loading. */
async function productsOf(tx: Tx, pallets: readonly PalletRow[]): Promise<readonly NoteProduct[]> {
  const contents = await contentsOf(
    tx,
    pallets.map((pallet) => pallet.id),
  );
  const products: NoteProduct[] = [];
  for (const formatId of new Set(pallets.map((pallet) => pallet.formatId))) {
    const own = pallets.filter((pallet) => pallet.formatId === formatId);
    const [first] = own;
    if (first === undefined) continue;
    const lots = await lotsOf(tx, own, contents);
    products.push({ name: first.formatName, gtin: first.gtin, nominalGrams: first.nominalGrams, lots });
  }
  return products;
}

async function lotsOf(
  tx: Tx,
  pallets: readonly PalletRow[],
  contents: readonly ContentRow[],
): Promise<readonly NoteLot[]> {
  const placed = pallets.flatMap((pallet) => contents.filter((row) => row.palletId === pallet.id));
  const weighed = new Set<string>();
  const lots: NoteLot[] = [];
  for (const lotId of new Set(placed.map((row) => row.lotId))) {
    const ofLot = placed.filter((row) => row.lotId === lotId);
    const nominalGrams = pallets[0]?.nominalGrams ?? 0;
    const packCount = packsIn(ofLot);
    lots.push({
      code: ofLot[0]?.lotCode ?? '',
      bestBeforeOn: await bestBeforeOfLot(tx, lotId),
      packCount,
      netGrams: packCount * nominalGrams,
      pallets: pallets.flatMap((pallet) => {
        const count = packsIn(ofLot.filter((row) => row.palletId === pallet.id));
        if (count === 0) return [];
        // The gross of a pallet of several lots stands once, with the first of them.
        const grossGrams = weighed.has(pallet.id) ? null : computedGrossGrams(pallet);
        weighed.add(pallet.id);
        return [{ sscc: pallet.sscc, packCount: count, netGrams: count * nominalGrams, grossGrams }];
      }),
    });
  }
  return lots;
}

async function bagGroupsOf(tx: Tx, bags: readonly BagRow[], at: Instant): Promise<readonly NoteBagGroup[]> {
  const standings = await standingsOf(tx, bags);
  const groups = new Map<string, NoteBag[]>();
  for (const bag of bags) {
    const gradeId = standings.get(bag.id)?.gradeId ?? bag.intendedGradeId;
    groups.set(gradeId, [...(groups.get(gradeId) ?? []), await noteBag(tx, bag, at)]);
  }
  const named: NoteBagGroup[] = [];
  for (const [gradeId, own] of groups) {
    const { name } = await gradeOf(tx, gradeId);
    named.push({ grade: name, netGrams: own.reduce((sum, bag) => sum + bag.netGrams, 0), bags: own });
  }
  return named;
}

async function noteBag(tx: Tx, bag: BagRow, at: Instant): Promise<NoteBag> {
  const scaleCode = bag.scaleId === null ? '–' : (await scaleStandingAt(tx, bag.scaleId, at)).scale.code;
  const { number, sscc, isPresetTare } = bag;
  const [netGrams, grossGrams, tareGrams] = [bag.netGrams ?? 0, bag.grossGrams ?? 0, bag.tareGrams ?? 0];
  return { number, sscc, netGrams, grossGrams, tareGrams, isPresetTare, scaleCode };
}
