import { isSscc } from '../core/identifiers/sscc.js';
import { siteOf } from '../plant/plant-facts.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Refusal } from '../platform/refusal.js';
import { addBag, type NewBag } from './add-bag.js';
import type { ClosedBag } from './close-bag.js';
import { closeFilledBag } from './close-filled-bag.js';
import type { WeighedBagForm } from './receipt.form.js';

/** Where bags come from that were not filled here, and who weighed them. */
export interface TakenIn {
  readonly nextId: () => string;
  readonly siteId: string;
  readonly origin: 'receipt' | 'opening-stock';
  readonly receiptId: string | null;
  readonly gradeId: string;
  readonly scaleId: string;
  readonly at: string;
  readonly personId: string | null;
  readonly hasHappened: boolean;
}

/**
 * Takes bags in that were filled elsewhere: each gets our numbers and is weighed.
 *
 * @throws {Refusal} `sscc-not-valid`, `sscc-is-ours`, `sscc-taken`, and those of `addWeighing`
 */
export async function takeInBags(
  tx: Tx,
  taken: TakenIn,
  forms: readonly WeighedBagForm[],
): Promise<readonly ClosedBag[]> {
  const bags: ClosedBag[] = [];
  for (const form of forms) bags.push(await takeInBag(tx, taken, form));
  return bags;
}

async function takeInBag(tx: Tx, taken: TakenIn, form: WeighedBagForm): Promise<ClosedBag> {
  const { nextId, siteId, at, personId, hasHappened, scaleId } = taken;
  const bag: NewBag = {
    id: nextId(),
    siteId,
    origin: taken.origin,
    dryerRunId: null,
    receiptId: taken.receiptId,
    intendedGradeId: taken.gradeId,
    linerLot: form.linerLot ?? null,
    safeLoadGrams: form.safeLoadGrams,
    fillStartedAt: at,
    sscc: form.sscc ?? null,
  };
  if (bag.sscc !== null) await refuseSscc(tx, siteId, bag.sscc);
  const { number, sscc } = await addBag(tx, bag);
  const { netGrams, isDoubtful } = await closeFilledBag(tx, {
    ...{ nextId, siteId, bagId: bag.id, bagNumber: number, fillStartedAt: at, filledAt: at, personId, hasHappened },
    ...{ grossGrams: form.grossGrams, tareGrams: form.tareGrams, isPresetTare: form.isPresetTare, scaleId },
    placeId: form.placeId ?? null,
  });
  return { id: bag.id, number, sscc, netGrams, isDoubtful };
}

/** A number that a bag brings with it stays its own, unless it can't be one, or could be given out here some day. */
async function refuseSscc(tx: Tx, siteId: string, sscc: string): Promise<void> {
  if (!isSscc(sscc)) throw new Refusal('sscc-not-valid', { sscc });
  const { companyPrefix, ssccExtensionDigit } = await siteOf(tx, siteId);
  if (sscc.startsWith(`${ssccExtensionDigit}${companyPrefix}`)) throw new Refusal('sscc-is-ours', { sscc });
  const [holder] = await tx.sql<{ number: string }>`SELECT "number" FROM "bulk_bag" WHERE "sscc" = ${sscc}`;
  if (holder !== undefined) throw new Refusal('sscc-taken', { sscc, bag: holder.number });
}
