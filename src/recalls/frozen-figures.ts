import type { RecallBalance, RecallRates } from '../core/recall-sums/recall-balance.js';
import { canonicalText, type Canonical } from '../platform/canonical-text.js';
import type { PackedPart } from '../tracing/thread.js';
import type { RecallCustomer } from './recall-customers.js';
import type { RecallFigures } from './recall-figures.js';
import type { RecallLink } from './recall-links.js';
import type { RecalledRemoval } from './recall-removed.js';
import type { RecalledUnit } from './recall-units.js';

/**
 * The figures of a recall as one text, the same for the same content: what is signed. Shares are decimal text, since
 * canonical text holds whole numbers only; customers stand by their codes, so that names can go.
 */
export function textOfFigures(figures: RecallFigures, links: readonly RecallLink[]): string {
  const { packs, milligrams, packRates, milligramRates, customers, parts, units, removals } = figures;
  return canonicalText({
    packs: sharesAsText(packs),
    milligrams: sharesAsText(milligrams),
    packRates: sharesAsText(packRates),
    milligramRates: sharesAsText(milligramRates),
    overRecall: shareText(figures.overRecall),
    hasAssumed: figures.hasAssumed,
    respondedCount: figures.respondedCount,
    customers: customers.map(({ packRates: rates, deliveries, ...customer }) => ({
      ...customer,
      packRates: sharesAsText(rates),
      deliveries: deliveries.map((delivery) => ({ ...delivery })),
    })),
    parts: parts.map(({ runId, runNumber, lotCode, fromCount, toCount }) => {
      return { runId, runNumber, lotCode, fromCount, toCount };
    }),
    units: units.map(({ delivery, ranges, ...unit }) => ({
      ...unit,
      ranges: ranges.map(({ runId, fromCount, toCount }) => ({ runId, fromCount, toCount })),
      deliveryId: delivery?.id ?? null,
      delivery: delivery === null ? null : (delivery.noteNumber ?? delivery.orderNumber),
      customerCode: delivery?.customerCode ?? null,
    })),
    links: links.map((link) => ({ ...link })),
    removals: removals.map(({ id, usedUp, packCount, grams, removedAt }) => {
      return { id, usedUp, packCount, grams, removedAt };
    }),
  });
}

function sharesAsText(sums: object): Canonical {
  return Object.fromEntries(
    Object.entries(sums).map(([name, value]: [string, Canonical]) => [
      name,
      typeof value === 'number' && name.endsWith('Percent') ? shareText(value) : value,
    ]),
  );
}

/** A share as it is printed and frozen. */
export function shareText(share: number | null): string | null {
  return share === null ? null : share.toFixed(2);
}

/** A balance as text holds it: its share is text. */
export type BalanceOfText = Omit<RecallBalance, 'accountedPercent'> & { readonly accountedPercent: string | null };

export type RatesOfText = Omit<RecallRates, 'recoveryPercent' | 'closedOutPercent'> & {
  readonly recoveryPercent: string | null;
  readonly closedOutPercent: string | null;
};

/** The figures of a recall as their text holds them: what is shown is read from it, signed or not. */
export interface FiguresOfText extends Pick<RecallFigures, 'hasAssumed' | 'respondedCount'> {
  readonly packs: BalanceOfText;
  readonly milligrams: BalanceOfText;
  readonly packRates: RatesOfText;
  readonly milligramRates: RatesOfText;
  readonly overRecall: string | null;
  readonly customers: readonly (Omit<RecallCustomer, 'packRates'> & { readonly packRates: RatesOfText })[];
  readonly parts: readonly Pick<PackedPart, 'runId' | 'runNumber' | 'lotCode' | 'fromCount' | 'toCount'>[];
  readonly units: readonly (Omit<RecalledUnit, 'delivery'> & {
    readonly deliveryId: string | null;
    readonly delivery: string | null;
    readonly customerCode: string | null;
  })[];
  readonly links: readonly RecallLink[];
  readonly removals: readonly Pick<RecalledRemoval, 'id' | 'usedUp' | 'packCount' | 'grams' | 'removedAt'>[];
}

export function figuresOfText(text: string): FiguresOfText {
  return JSON.parse(text) as FiguresOfText;
}
