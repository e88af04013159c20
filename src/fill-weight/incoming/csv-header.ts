import type { LineFault } from './sent-weight.js';
import { fault, weightFields } from './sent-weight.js';
import { instantOfBytes } from './instant-bytes.js';
import type { CsvLayout } from './csv-layout.js';
import { unquoted } from './quoted-fields.js';

const separators = [';', '\t', ','] as const;

/** The first line of a table: which column means what. Fields are parted by `;`, a tab or `,`: the first that it holds. */
export function layoutOfHeader(line: Uint8Array): CsvLayout | LineFault {
  const separator = separators.find((one) => line.includes(one.charCodeAt(0))) ?? ',';
  const names = unquoted(line, separator)?.map((name) => name.trim());
  if (names === undefined) return fault('', 'weight-header-not-read', { fields: weightFields.join(', ') });
  const columns = names.map((name) => weightFields.find((field) => field.toLowerCase() === name.toLowerCase()) ?? null);
  const unknown = columns.indexOf(null);
  if (unknown >= 0) {
    const named = (names[unknown] ?? '').slice(0, 40);
    return fault(named, 'weight-column-unknown', { column: unknown + 1, named, fields: weightFields.join(', ') });
  }
  const twice = columns.find((field, place) => columns.indexOf(field) !== place);
  if (twice !== undefined) return fault(twice ?? '', 'weight-given-twice');
  return { separator: separator.charCodeAt(0), columns, instantOf: instantOfBytes };
}
