import { applicationIdentifier } from './application-identifiers.js';
import {
  elementFault,
  elementValue,
  fault,
  type ElementRules,
  type ElementsReading,
  type Gs1Element,
} from './elements.js';
import { decodePercent, encodePercent } from './percent-code.js';

/** The canonical front of a Digital Link (GS1 Digital Link: URI Syntax). */
const CANONICAL_BASE = 'https://id.gs1.org';

/** Keys that we print or meet, with the qualifiers that may follow in the path, in this order (GS1 Barcode Syntax Dictionary). */
const QUALIFIERS: ReadonlyMap<string, readonly string[]> = new Map([
  ['00', []],
  ['01', ['22', '10', '21']],
  ['402', []],
  ['414', ['254']],
  ['417', []],
]);

const URI_CHARACTERS = /^[A-Za-z0-9\-._~:/?#[\]@!$&'()*+,;=%]*$/;
const URI_FRONT = /^(?:https?|HTTPS?):\/\/(?:[A-Za-z0-9.-]+|\[[0-9A-Fa-f:.]+\])(?::\d+)?\//;

/**
 * Reads a GS1 Digital Link, the web address that a QR code on a pack may hold, from any domain and with any stem.
 *
 * In the path stand a key (00, 01, 402, 414 or 417) and its qualifiers in their order (01: 22, 10, 21; 414: 254), behind the question mark
 * further identifiers; a qualifier of the key may not stand there. A GTIN has 14 digits. Other parameters are passed over unless their
 * name is a number. The fragment is ignored.
 *
 * @returns the elements, path first, in the order in which they stood; or the first fault. Never throws.
 * @example
 * readDigitalLink('https://id.gs1.org/01/09520123000103/10/A61?15=270115', { currentYear: 2026 })
 * // { ok: true, elements: [{ ai: '01', value: '09520123000103' }, { ai: '10', value: 'A61' }, { ai: '15', value: '270115' }] }
 */
export function readDigitalLink(uri: string, rules: ElementRules): ElementsReading {
  const front = URI_FRONT.exec(uri)?.[0] ?? null;
  if (front === null || !URI_CHARACTERS.test(uri)) return fault('malformed-link', null);
  const [address = ''] = uri.slice(front.length).split('#');
  const mark = address.indexOf('?');
  const path = readPath(mark < 0 ? address : address.slice(0, mark));
  if (!path.ok) return path;
  const query = readQuery(mark < 0 ? '' : address.slice(mark + 1), path.elements);
  if (!query.ok) return query;
  const elements = [...path.elements, ...query.elements];
  return elementFault(elements, rules) ?? { ok: true, elements };
}

/**
 * The Digital Link of some elements: the first key among them with its qualifiers in the path, everything else behind the question mark in
 * the given order, percent-coded. What stands twice is written once.
 *
 * @param base scheme, domain and stem without a slash at the end; without it the canonical `https://id.gs1.org`.
 * @throws RangeError where no key is among them, where an identifier may not stand behind the question mark, or where `elementFault`
 * finds something.
 * @example
 * writeDigitalLink([{ ai: '01', value: '09520123000103' }, { ai: '10', value: 'A/61' }], { currentYear: 2026 })
 * // 'https://id.gs1.org/01/09520123000103/10/A%2F61'
 */
export function writeDigitalLink(
  elements: readonly Gs1Element[],
  rules: ElementRules,
  base: string = CANONICAL_BASE,
): string {
  const found = elementFault(elements, rules);
  if (found !== null) throw new RangeError(`element ${found.ai ?? 'string'}: ${found.problem}`);
  const key = elements.find(({ ai }) => QUALIFIERS.has(ai));
  if (key === undefined) throw new RangeError('a Digital Link needs a key: 00, 01, 402, 414 or 417');
  const inPath = [key.ai, ...(QUALIFIERS.get(key.ai) ?? [])].filter((ai) => elementValue(elements, ai) !== null);
  const attributes = elements.filter(
    ({ ai }, place) => !inPath.includes(ai) && elements.findIndex((other) => other.ai === ai) === place,
  );
  const unfit = attributes.find(({ ai }) => applicationIdentifier(ai)?.mayBeAttribute !== true);
  if (unfit !== undefined) throw new RangeError(`(${unfit.ai}) may not stand behind the question mark`);
  const path = inPath.map((ai) => `/${ai}/${encodePercent(elementValue(elements, ai) ?? '')}`).join('');
  const query = attributes.map(({ ai, value }) => `${ai}=${encodePercent(value)}`).join('&');
  return base + path + (query === '' ? '' : `?${query}`);
}

/** From the end of the path backwards in pairs, until the key: what stands before it is the stem. */
function readPath(path: string): ElementsReading {
  const parts = path.split('/');
  const elements: Gs1Element[] = [];
  for (let at = parts.length - 2; at >= 0; at -= 2) {
    const ai = parts[at] ?? '';
    if (applicationIdentifier(ai) === null)
      return /^\d{2,4}$/.test(ai) ? fault('unknown-ai', ai) : fault('no-key', null);
    elements.unshift({ ai, value: decodePercent(parts[at + 1] ?? '', 'path') });
    const qualifiers = QUALIFIERS.get(ai);
    if (qualifiers === undefined) continue;
    return inOrder(elements.slice(1), qualifiers) ? { ok: true, elements } : fault('wrong-path', ai);
  }
  return fault('no-key', null);
}

function inOrder(elements: readonly Gs1Element[], qualifiers: readonly string[]): boolean {
  const places = elements.map(({ ai }) => qualifiers.indexOf(ai));
  return places.every((place, at) => place >= 0 && place > (places[at - 1] ?? -1));
}

function readQuery(query: string, path: readonly Gs1Element[]): ElementsReading {
  const taken = new Set([...path.map(({ ai }) => ai), ...(QUALIFIERS.get(path[0]?.ai ?? '') ?? [])]);
  const elements: Gs1Element[] = [];
  for (const parameter of query.split('&')) {
    const equals = parameter.indexOf('=');
    const name = decodePercent(equals < 0 ? '' : parameter.slice(0, equals), 'query');
    if (!/^\d+$/.test(name)) continue;
    const row = applicationIdentifier(name);
    if (row === null) return fault('unknown-ai', name);
    if (!row.mayBeAttribute || taken.has(name)) return fault('wrong-attribute', name);
    taken.add(name);
    elements.push({ ai: name, value: decodePercent(parameter.slice(equals + 1), 'query') });
  }
  return { ok: true, elements };
}
