import { bagsOf } from '../drying/bulk-bags.js';
import { standingsOf } from '../disposition/standings.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { palletsOf } from '../pallets/pallet-list.js';
import { linesOf, loadedOn } from './deliveries.js';
import type { LineProgress } from './delivery-rows.js';

/** What of each order line is on the vehicle: packs of the pallets of its format, bags of its grade. */
export async function progressOf(from: ReadFrom, deliveryId: string): Promise<readonly LineProgress[]> {
  const lines = await linesOf(from, deliveryId);
  const loaded = await loadedOn(from, deliveryId);
  const pallets = await palletsOf(
    from,
    loaded.flatMap((row) => row.palletId ?? []),
  );
  const grades = await gradesOfBags(
    from,
    loaded.flatMap((row) => row.bagId ?? []),
  );
  return lines.map((line) => {
    const packs = pallets.filter((pallet) => pallet.formatId === line.formatId);
    const loadedCount =
      line.formatId === null
        ? grades.filter((gradeId) => gradeId === line.gradeId).length
        : packs.reduce((sum, pallet) => sum + pallet.packCount, 0);
    return { ...line, loadedCount, leftCount: Math.max(0, line.orderedCount - loadedCount) };
  });
}

async function gradesOfBags(from: ReadFrom, bagIds: readonly string[]): Promise<readonly string[]> {
  const bags = await bagsOf(from, bagIds);
  const standings = await standingsOf(from, bags);
  return bags.map((bag) => standings.get(bag.id)?.gradeId ?? bag.intendedGradeId);
}
