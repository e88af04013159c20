import { canonicalText, type Canonical } from '../platform/canonical-text.js';
import type { RecallFigures } from './recall-figures.js';
import type { RecallLink } from './recall-links.js';

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

/** The links of a recall as they were signed. */
export function linksOfText(text: string): readonly RecallLink[] {
  return (JSON.parse(text) as { readonly links: readonly RecallLink[] }).links;
}
