import { changesAbout, type ChangeLine } from '../disposition/changes-to-look-at.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { threadLink } from '../tracing/thread-text.js';
import type { RecallLink } from './recall-links.js';

/** A record that belongs in the file of a recall, and where it is. */
export interface RecallRecord {
  readonly kind: string;
  readonly number: string;
  readonly link: string;
}

/** Every record that belongs in the file, once, with where it is. */
export function recordsOf(
  links: readonly RecallLink[],
  { removals }: { readonly removals: readonly { readonly id: string }[] },
): readonly RecallRecord[] {
  const records = new Map<string, RecallRecord>();
  const put = (kind: string, number: string, link = threadLink(number)): void => {
    if (number !== '') records.set(`${kind} ${number}`, { kind, number, link });
  };
  for (const { step, parent, child } of links) {
    if (step === 'bag-run') put('bulk-bag', parent);
    if (step === 'bag-run') put('packing-run', child);
    if (step === 'run-lot') put('packing-run', parent);
    if (step === 'run-lot') put('lot', child);
    if (step === 'lot-pallet') put('pallet', child);
    if (step === 'unit-delivery') put('delivery', child);
  }
  for (const { id } of removals) put('removal', id, '/journal');
  return [...records.values()];
}

/** Corrections and late entries of what a recall rests on: its runs, pallets and bags; in the order of recording. */
export async function changesOfRecall(
  from: ReadFrom,
  siteId: string,
  figures: {
    readonly parts: readonly { readonly runId: string }[];
    readonly units: readonly { readonly id: string }[];
  },
): Promise<readonly ChangeLine[]> {
  const ids = new Set([...figures.parts.map(({ runId }) => runId), ...figures.units.map(({ id }) => id)]);
  return (await changesAbout(from, siteId, [...ids])).toReversed();
}
