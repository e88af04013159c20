import type { PageQuery } from './page-query.js';

/** Which page of a list is asked for. */
export interface Page {
  readonly before: string | null;
  readonly limit: number;
}

/** A page of a list: `next` is what `before` must be to go on; null at the end. */
export interface Listed<Row> {
  readonly items: readonly Row[];
  readonly next: string | null;
}

export function pageOf(query: PageQuery): Page {
  return { before: query.before ?? null, limit: query.limit ?? 50 };
}

/** A full page may have more behind it. */
export function listed<Row extends { readonly id: string }>(items: readonly Row[], page: Page): Listed<Row> {
  return { items, next: items.length < page.limit ? null : (items.at(-1)?.id ?? null) };
}
