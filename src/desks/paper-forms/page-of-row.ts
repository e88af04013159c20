import type { Asked } from '../../journal/entry-draft.js';

/** A key of its own for each entry that one form makes. */
export function keyedFor(asked: Asked, part: string): Asked {
  return { ...asked, key: asked.key === null ? null : `${asked.key.slice(0, 48)}-${part}` };
}

/** Where keying in goes on. */
export function pageOfRow(sheet: string, row: number | null): string {
  return row === null ? `/paper-forms/${sheet}` : `/paper-forms/${sheet}?row=${row}#row`;
}
