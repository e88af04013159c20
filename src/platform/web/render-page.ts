import type { VNode } from 'preact';
import { renderToString } from 'preact-render-to-string';

/** A page as HTML text. Everything that is not markup is escaped by the renderer. */
export function renderPage(page: VNode): string {
  return `<!doctype html>${renderToString(page)}`;
}
