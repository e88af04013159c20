import { randomUUID } from 'node:crypto';
import type { Rewrite } from './front.js';

/**
 * A page of work with one of everything that the browser's modules look for, in the frame of a real page: it stands
 * under `/device/queue?try`, with forms that go to routes of the house.
 */
export const tryPage: Rewrite = (path, html) => {
  if (!path.startsWith('/device/size?try') && !path.startsWith('/device/size?scan')) return html;
  const csrf = /data-csrf="([^"]+)"/.exec(html)?.[1] ?? '';
  const scan = decodeURIComponent(/[?&]scan=([^&]*)/.exec(path)?.[1] ?? '');
  const said = scan === '' ? '<p class="quiet">Scan</p>' : `<p class="word">SCANNED</p><p>${scan}</p>`;
  // This page has a place for scans: it begins there.
  const without = html.replace('<main id="content" tabindex="-1" autofocus', '<main id="content" tabindex="-1"');
  return without.replace(/<\/h1>.*<\/main>/s, () => `</h1>${band(said)}${entry(csrf)}${other(csrf)}</main>`);
};

const band = (said: string): string => `
  <section id="band" class="band quiet" aria-label="Last scan">
    <form class="scan" method="get" action="/device/size" data-scan>
      <label for="scan" class="unseen">Scan</label><input id="scan" name="scan" type="text" autofocus>
      <button type="submit">Look</button>
    </form>
    <div class="said" role="status" aria-live="polite">${said}</div><div class="acts"></div>
  </section>`;

const entry = (csrf: string): string => `
  <form id="entry" method="post" action="/api/plant/places" data-queue="count" novalidate>
    <input type="hidden" name="csrf" value="${csrf}"><input type="hidden" name="formKey" value="${randomUUID()}">
    <input type="hidden" name="kind" value="store">
    <div class="trouble" data-trouble="entry" role="alert" hidden></div>
    <div class="field" data-field="code"><label for="field-code">Code</label>
      <input id="field-code" name="code" type="text"><p class="wrong" id="field-code-wrong" hidden></p></div>
    <button type="submit" data-command="PLACE">Add</button>
  </form>`;

const other = (csrf: string): string => `
  <form id="other" method="post" action="/device/size">
    <input type="hidden" name="csrf" value="${csrf}">
    <label for="number">Number</label>
    <input id="number" type="text" name="step" inputmode="decimal" data-number="5" maxlength="6">
    <button type="submit" data-command="WIDER">Wider</button>
    <button type="submit" class="careful" data-command="CAREFUL" name="careful" value="yes">Careful</button>
  </form>
  <div id="live" data-live="add-store-place"><p id="stamp">${randomUUID()}</p><input id="draft" aria-label="Draft"></div>`;
