import { listenToKeys, type HeardScan } from './hear-scan.js';
import { setScannerHabit } from './scan.js';
import { say } from './words.js';

/** The reference code of the self-test: all that own labels use, and a separator in the middle. */
const reference = 'PT0123456789-ABCDEFGHIJKLMNOPQRSTUVWXYZ';

/** Says in words what the scanner of this device does to a code that is known. */
export function testScanner(): void {
  const place = document.querySelector<HTMLElement>('#scanner-test [role=status]');
  if (place === null) return;
  listenToKeys((heard) => {
    const lines = findingsOf(heard);
    place.replaceChildren(
      ...lines.map((line) => {
        const said = document.createElement('p');
        said.textContent = line;
        return said;
      }),
    );
  });
}

function findingsOf({ text, end, meanGap }: HeardScan): string[] {
  const core = coreOf(text);
  if (core === null) return [say('browser-scanner-other', { code: text })];
  const { prefix, suffix, found } = core;
  const wrong = faultsOf(found);
  const ended = end ?? 'none';
  if (ended !== 'none') setScannerHabit({ prefix, suffix: ended });
  return [
    wrong.length === 0 ? say('browser-scanner-fine') : say('browser-scanner-wrong'),
    ...wrong,
    ...(prefix === '' ? [] : [say('browser-scanner-prefix', { prefix })]),
    ...(suffix === '' ? [] : [say('browser-scanner-suffix', { suffix })]),
    ended === 'none' ? say('browser-scanner-no-end') : say('browser-scanner-end', { key: ended }),
    say('browser-scanner-speed', { gap: Math.round(meanGap) }),
  ];
}

/** Finds the reference in what came, whatever stands around it. */
function coreOf(text: string): { readonly prefix: string; readonly suffix: string; readonly found: string } | null {
  const at = text.toUpperCase().search(/PT.{10}/);
  if (at < 0) return null;
  const found = text.slice(at, at + reference.length);
  if (found.length < reference.length - 2) return null;
  return { prefix: text.slice(0, at), suffix: text.slice(at + reference.length), found };
}

function faultsOf(found: string): string[] {
  if (found === reference) return [];
  if (found === reference.toLowerCase()) return [say('browser-scanner-lower-case')];
  const swaps = [...reference].flatMap((character, place) => {
    const came = found[place] ?? '';
    return came === character ? [] : [say('browser-scanner-swap', { character, came: came === '' ? '–' : came })];
  });
  return swaps.slice(0, 12);
}
