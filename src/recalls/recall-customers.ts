import { recallRates, type RecallRates } from '../core/recall-sums/recall-balance.js';
import { packsIn } from '../packing/run-ranges.js';
import { customerOf } from '../plant/plant-facts.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { groupBy } from '../platform/group-by.js';
import type { RecallAnswerRow } from './recalls.js';
import type { RecalledUnit } from './recall-units.js';

/** What a customer got and what it says became of it. */
export interface RecallCustomer {
  readonly customerId: string;
  readonly code: string;
  readonly deliveries: readonly RecallDelivery[];
  readonly palletCount: number;
  readonly bagCount: number;
  /** Recalled packs; there may be others on the same pallets. */
  readonly packCount: number;
  readonly milligrams: number;
  readonly returnedPackCount: number;
  readonly destroyedPackCount: number;
  readonly soldPackCount: number;
  readonly packRates: RecallRates;
  /** Whether it has said anything but that it does not know yet. */
  readonly hasAnswered: boolean;
}

export interface RecallDelivery {
  readonly deliveryId: string;
  /** The delivery note, or the order where there is none. */
  readonly number: string;
  readonly notePaperId: string | null;
  readonly lotCodes: readonly string[];
  readonly ssccs: readonly string[];
}

/** Grams in thousandths of what is on a unit. */
export type MilligramsOf = (unit: RecalledUnit) => number;

/** The customers that recalled goods went to, with their answers; the largest first. */
export async function customersOfRecall(
  from: ReadFrom,
  units: readonly RecalledUnit[],
  milligramsOf: MilligramsOf,
  answers: readonly RecallAnswerRow[],
): Promise<readonly RecallCustomer[]> {
  const gone = units.filter(({ place, delivery }) => place === 'dispatched' && delivery !== null);
  const byCustomer = groupBy(gone, ({ delivery }) => delivery?.customerId ?? '');
  const customers: RecallCustomer[] = [];
  for (const [customerId, own] of byCustomer) {
    const { code } = await customerOf(from, customerId);
    const said = answers.filter((answer) => answer.customerId === customerId);
    const packCount = own.reduce((sum, { ranges }) => sum + packsIn(ranges), 0);
    const packsOf = (kind: RecallAnswerRow['answer']): number =>
      said.filter(({ answer }) => answer === kind).reduce((sum, answer) => sum + answer.packCount, 0);
    const [returned, destroyedAtCustomer, confirmedSold] = [
      packsOf('returned'),
      packsOf('destroyed-at-customer'),
      packsOf('confirmed-sold'),
    ];
    customers.push({
      ...{ customerId, code, packCount, deliveries: deliveriesOf(own) },
      palletCount: own.filter(({ kind }) => kind === 'pallet').length,
      bagCount: own.filter(({ kind }) => kind === 'bulk-bag').length,
      milligrams: own.reduce((sum, unit) => sum + milligramsOf(unit), 0),
      ...{ returnedPackCount: returned, destroyedPackCount: destroyedAtCustomer, soldPackCount: confirmedSold },
      packRates: recallRates({ dispatched: packCount, returned, destroyedAtCustomer, confirmedSold }),
      hasAnswered: said.some(({ answer }) => answer !== 'nothing-yet'),
    });
  }
  return customers.sort((one, other) => other.milligrams - one.milligrams || (one.code < other.code ? -1 : 1));
}

function deliveriesOf(units: readonly RecalledUnit[]): readonly RecallDelivery[] {
  return [...groupBy(units, ({ delivery }) => delivery?.id ?? '')].map(([deliveryId, own]) => ({
    deliveryId,
    number: own[0]?.delivery?.noteNumber ?? own[0]?.delivery?.orderNumber ?? '',
    notePaperId: own[0]?.delivery?.notePaperId ?? null,
    lotCodes: [...new Set(own.flatMap(({ lotCodes }) => lotCodes))].sort(),
    ssccs: own.map(({ name }) => name),
  }));
}
