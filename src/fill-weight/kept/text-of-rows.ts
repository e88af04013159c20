import { canonicalText, type Canonical } from '../../platform/canonical-text.js';

/** The same text for the same rows, in whatever order they come. */
export function textOfRows(rows: readonly object[]): string {
  return rows
    .map((row) => canonicalText(JSON.parse(JSON.stringify(row)) as Canonical))
    .sort()
    .join('\n');
}
