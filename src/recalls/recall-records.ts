import { entriesAbout, type EntryLine } from '../journal/journal-entries.js';
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

/** Corrections of what the recall rests on, and what was entered with a time set back. */
export async function laterEntries(
  from: ReadFrom,
  siteId: string,
  figures: {
    readonly parts: readonly { readonly runId: string }[];
    readonly units: readonly { readonly kind: string; readonly id: string }[];
  },
): Promise<readonly EntryLine[]> {
  const subjects = [
    ...[...new Set(figures.parts.map(({ runId }) => runId))].map((id) => ({ kind: 'packing-run', id })),
    ...figures.units.map(({ kind, id }) => ({ kind, id })),
  ];
  const found = new Map<number, EntryLine>();
  for (const subject of subjects) {
    for (const entry of await entriesAbout(from, siteId, subject)) {
      if (entry.statedAt !== null || /^(correct|void)-/.test(entry.action)) found.set(entry.sequence, entry);
    }
  }
  return [...found.values()].sort((one, other) => one.sequence - other.sequence);
}
