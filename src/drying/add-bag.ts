import { makeBagNumber } from '../core/identifiers/bag-number.js';
import { takeNumber } from '../platform/database/number-series.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Refusal } from '../platform/refusal.js';
import { BagState } from './bag-state.entity.js';
import { BulkBag } from './bulk-bag.entity.js';
import type { DryerRunRow } from './dryer-runs.js';
import { takeSscc } from './take-sscc.js';

/** A bag as it comes into being. */
export interface NewBag {
  readonly id: string;
  readonly siteId: string;
  readonly origin: BulkBag['origin'];
  readonly dryerRunId: string | null;
  readonly receiptId: string | null;
  readonly intendedGradeId: string;
  readonly linerLot: string | null;
  readonly safeLoadGrams: number;
  readonly fillStartedAt: string;
  /** The number that it brings with it; null: it gets one of ours. */
  readonly sscc: string | null;
}

/** Gives a bag its two numbers and hangs it under the filler: it is `filling` until it is weighed. */
export async function addBag(tx: Tx, bag: NewBag): Promise<{ readonly number: string; readonly sscc: string }> {
  const number = makeBagNumber(await takeNumber(tx, bag.siteId, 'bulk-bag'));
  const sscc = bag.sscc ?? (await takeSscc(tx, bag.siteId));
  await tx.insert(BulkBag, { ...bag, number, sscc, voidedBy: null });
  const state = { status: 'filling', remainingGrams: 0, placeId: null, changedAt: bag.fillStartedAt } as const;
  await tx.insert(BagState, { bagId: bag.id, ...state });
  return { number, sscc };
}

/**
 * A bag is filled during its run.
 *
 * @throws {Refusal} `time-before-run`, `dryer-run-ended`
 */
export function refuseOutsideRun(run: DryerRunRow, fillStartedAt: string): void {
  if (fillStartedAt < run.startedAt) {
    throw new Refusal('time-before-run', { run: run.number, startedAt: run.startedAt });
  }
  if (run.endedAt !== null && fillStartedAt >= run.endedAt) {
    throw new Refusal('dryer-run-ended', { run: run.number, endedAt: run.endedAt });
  }
}
