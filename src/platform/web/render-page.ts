import type { VNode } from 'preact';
import { renderToString } from 'preact-render-to-string';

/** A page as HTML text. Everything that is not markup is escaped by the renderer. */
export function renderPage(page: VNode): string {
  return `<!doctype html>${begun(renderToString(page))}`;
}

/** A tag with `autofocus` among its attributes. */
const hasBeginning = /<[a-z][\w-]*(?: [\w:-]+(?:="[^"]*")?)*? autofocus[\s/>]/;
const content = '<main id="content" tabindex="-1"';

/** Where no field or link of a page has the focus when it opens, the keyboard goes on from its content, past the ways. */
function begun(html: string): string {
  return hasBeginning.test(html) ? html : html.replace(content, `${content} autofocus`);
}
