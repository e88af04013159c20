import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { ReadWeights, type WeightsKind } from './read-weights.js';

const encoder = new TextEncoder();

/** Reads bytes in chunks of a size. */
function read(kind: WeightsKind['kind'] & ('ndjson' | 'csv'), sent: string | Uint8Array, chunk = 7): ReadWeights {
  const reader = new ReadWeights({ kind });
  const bytes = typeof sent === 'string' ? encoder.encode(sent) : sent;
  for (let start = 0; start < bytes.length; start += chunk) reader.take(bytes.subarray(start, start + chunk));
  reader.end();
  return reader;
}

function first({ rows, faults, lines, runs }: ReadWeights): unknown {
  const [problem] = faults.problems();
  if (problem !== undefined) return problem.code;
  return {
    sequence: rows.sequences[0],
    at: rows.atCentiseconds[0],
    net: rows.netMilligrams[0],
    head: rows.heads[0],
    rejected: rows.rejected[0],
    line: lines.all()[(rows.lines[0] ?? 0) - 1] ?? null,
    run: runs.all()[(rows.runs[0] ?? 0) - 1] ?? null,
  };
}

/** All that was read, and what was wrong with it. */
function allOf({ rows, faults, runs, lines }: ReadWeights): unknown[] {
  const columns = [rows.sequences, rows.atCentiseconds, rows.netMilligrams, rows.heads, rows.rejected, rows.lines];
  const numbers = [...columns, rows.runs, rows.lineNumbers].map((column) => [...column.subarray(0, rows.count)]);
  return [...numbers, faults.problems(), runs.all(), lines.all()];
}

const at = '2026-03-12T07:41:03.412Z';
const atCentiseconds = Math.floor(Date.parse(at) / 10);
const plain = { sequence: 7, at, netGrams: 1003.2 };
const understood = { sequence: 7, at: atCentiseconds, net: 1_003_200, head: -1, rejected: -1, line: null, run: null };

/** Spaces, order and numbers of JSON as others may write it; some outside of what a weight can be. */
const jsonLine = fc
  .record(
    {
      sequence: fc.oneof(fc.nat(), fc.maxSafeInteger(), fc.double(), fc.constantFrom('1', null, true)),
      at: fc.oneof(
        fc.date({ min: new Date(0), max: new Date('2199-12-31'), noInvalidDate: true }).map((day) => day.toISOString()),
        fc.constantFrom('2026-02-30T00:00:00Z', '2026-03-12T07:41+01:00', '2026-03-12T24:00:00Z', 'now', 12),
      ),
      netGrams: fc.oneof(
        fc.integer({ min: -10, max: 3_000_000 }).map((net) => net / 1000),
        fc.double(),
        fc.constantFrom('1003.2', null),
      ),
      netMilligrams: fc.oneof(fc.integer(), fc.constantFrom(0.5, null)),
      head: fc.oneof(fc.integer({ min: -2, max: 300 }), fc.constantFrom('3', null)),
      rejected: fc.constantFrom(true, false, 0, 'true', null),
      line: fc.oneof(fc.string({ maxLength: 5 }), fc.string({ unit: 'binary', maxLength: 70 }), fc.constant(1)),
      run: fc.oneof(fc.constantFrom('PR-2026-000042', ' PR-2026-000042 ', ''), fc.string({ unit: 'binary' })),
      ['other']: fc.jsonValue(),
    },
    { requiredKeys: [] },
  )
  .chain((said) => fc.shuffledSubarray(Object.entries(said), { minLength: 0 }))
  .chain((entries) =>
    fc.constantFrom('', ' ', '\t ').map((space) => {
      const written = (named: (name: string) => string): string => {
        const parts = entries.map(([name, value]) => `${named(name)}${space}:${space}${JSON.stringify(value)}`);
        return `${space}{${space}${parts.join(`${space},${space}`)}${space}}${space}\n`;
      };
      const escaped = (name: string): string => `"\\u00${name.charCodeAt(0).toString(16)}${name.slice(1)}"`;
      return { plainly: written((name) => `"${name}"`), escaped: written(escaped) };
    }),
  );

describe('a line of JSON', () => {
  it('is read whatever the order, the spaces and the way of writing numbers', () => {
    expect(first(read('ndjson', JSON.stringify(plain)))).toEqual(understood);
    expect(first(read('ndjson', ` { "netGrams" : 1003.20 ,\t"at":"${at}","sequence":7 } \r\n`))).toEqual(understood);
    expect(first(read('ndjson', `{"sequence":7e0,"at":"${at}","netGrams":10.032e2}`))).toEqual(understood);
    expect(
      first(read('ndjson', `{"sequence":7,"at":"2026-03-12T08:41:03.412+01:00","netMilligrams":1003200}`)),
    ).toEqual(understood);
    expect(first(read('ndjson', `{"s\\u0065quence":7,"at":"${at}","netGrams":1003.2}`))).toEqual(understood);
    const whole = { ...plain, head: 3, rejected: true, line: '1', run: 'PR-2026-000042' };
    const all = { ...understood, head: 3, rejected: 1, line: '1', run: 'PR-2026-000042' };
    expect(first(read('ndjson', JSON.stringify(whole)))).toEqual(all);
  });

  it('means by the quick way exactly what it means by the parser of the language', () => {
    fc.assert(
      // An escape in a name leaves the quick way.
      fc.property(jsonLine, ({ plainly, escaped }) => {
        expect(first(read('ndjson', plainly, 1000))).toEqual(first(read('ndjson', escaped, 1000)));
      }),
      { numRuns: 3000, seed: 952 },
    );
  });

  it('is refused for what JSON does not know, with the reason', () => {
    const wrong = (line: string): unknown => first(read('ndjson', line));
    for (const bad of ['NaN', 'Infinity', '-Infinity', '01', '.5', '1.', '+1', '0x10', "'1'", '1,2']) {
      expect([bad, wrong(`{"sequence":7,"at":"${at}","netGrams":${bad}}`)]).toEqual([bad, 'weight-line-not-json']);
    }
    expect(wrong(`{"sequence":7,"at":"${at}","netGrams":1e999}`)).toBe('weight-not-number');
    expect(wrong(`{"sequence":7,"at":"${at}","netGrams":"1003.2"}`)).toBe('weight-not-number');
    expect(wrong(`{"sequence":1.5,"at":"${at}","netGrams":1}`)).toBe('field-not-whole');
    expect(wrong(`{"sequence":-1,"at":"${at}","netGrams":1}`)).toBe('field-not-whole');
    expect(wrong(`{"sequence":1,"at":"2026-02-30T00:00:00Z","netGrams":1}`)).toBe('field-not-instant');
    expect(wrong(`{"sequence":1,"at":"2026-03-12T07:41:03","netGrams":1}`)).toBe('field-not-instant');
    expect(wrong(`{"sequence":1,"at":"${at}"}`)).toBe('field-missing');
    expect(wrong(`{"sequence":1,"at":"${at}","netGrams":1,"netMilligrams":1000}`)).toBe('weight-given-twice');
    expect(wrong(`{"sequence":1,"at":"${at}","netGrams":1,"colour":"red"}`)).toBe('field-unknown');
    expect(wrong(`{"sequence":1,"at":"${at}","netGrams":1,"__proto__":{"head":1}}`)).toBe('field-unknown');
    expect(wrong(`{"sequence":1,"at":"${at}","netGrams":1} x`)).toBe('weight-line-not-json');
    expect(wrong('[1]')).toBe('weight-line-not-json');
    expect(wrong('['.repeat(9000))).toBe('weight-line-not-json');
    expect(first(read('ndjson', Uint8Array.of(0x7b, 0xff, 0xfe, 0x0a)))).toBe('weight-line-not-json');
  });

  it('names the line in error and reads the others; a line of ten megabytes is one of them', () => {
    const line = (sequence: number): string => JSON.stringify({ ...plain, sequence });
    const long = `{"sequence":2,"at":"${'x'.repeat(10_000_000)}"}`;
    const reader = read('ndjson', `\uFEFF${line(1)}\n\n${long}\r\n${line(4)}\nrubbish\n${line(6)}`, 65_536);
    expect([...reader.rows.sequences.subarray(0, reader.rows.count)]).toEqual([1, 4, 6]);
    expect([...reader.rows.lineNumbers.subarray(0, reader.rows.count)]).toEqual([1, 4, 6]);
    expect(reader.faults.problems().map(({ line: at, code }) => [at, code])).toEqual([
      [3, 'weight-line-too-long'],
      [5, 'weight-line-not-json'],
    ]);
    expect([reader.lineCount, reader.endsWithNewline]).toEqual([5, false]);
  });

  it('is read by the shape of the line before exactly as by itself', () => {
    fc.assert(
      fc.property(fc.array(jsonLine, { minLength: 2, maxLength: 12 }), fc.boolean(), (some, isTwice) => {
        // Each line twice: the second is read by the shape of the first, where it has one.
        const text = some.flatMap(({ plainly }) => (isTwice ? [plainly, plainly] : [plainly])).join('');
        expect(allOf(read('ndjson', text, text.length))).toEqual(allOf(read('ndjson', text, 7)));
      }),
      { numRuns: 1000, seed: 952 },
    );
  });

  it('is read alike wherever the bytes are cut into pieces', () => {
    const text = Array.from({ length: 50 }, (_, place) => JSON.stringify({ ...plain, sequence: place })).join('\n');
    const whole = read('ndjson', text, text.length);
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 300 }), (chunk) => {
        const cut = read('ndjson', text, chunk);
        expect(cut.rows.count).toBe(50);
        expect(cut.rows.sequences.subarray(0, 50)).toEqual(whole.rows.sequences.subarray(0, 50));
      }),
      { numRuns: 30 },
    );
  });
});

describe('a line of CSV', () => {
  const table = (header: string, line: string): unknown => first(read('csv', `${header}\r\n${line}\r\n`));

  it('takes a decimal comma where fields are not parted by commas, and quotes', () => {
    expect(table('sequence,at,netGrams', `7,${at},1003.2`)).toEqual(understood);
    expect(table('sequence;at;netGrams', `7;${at};1003,2`)).toEqual(understood);
    expect(table('sequence\tat\tnetGrams', `7\t${at}\t 1003,200 `)).toEqual(understood);
    expect(table('sequence,at,netGrams', `"7","${at}","1003.2"`)).toEqual(understood);
    expect(table('"Sequence";"At";"netMilligrams";"Head"', `7;${at};1003200;`)).toEqual(understood);
    const marked = table('sequence;at;netGrams;rejected;run', `7;${at};1003,2;YES;PR-2026-000042`);
    expect(marked).toEqual({ ...understood, rejected: 1, run: 'PR-2026-000042' });
  });

  it('is refused where a decimal comma makes a field too many, and for words that are no numbers', () => {
    expect(table('sequence,at,netGrams', `7,${at},1003,2`)).toBe('weight-fields-not-counted');
    expect(table('sequence,at,netGrams', `7,${at}`)).toBe('weight-fields-not-counted');
    for (const bad of ['NaN', 'Infinity', '1e999', '1.003,2', '1 003', '-', '1.', 'ten']) {
      expect([bad, table('sequence;at;netGrams', `7;${at};${bad}`)]).toEqual([bad, 'weight-not-number']);
    }
    expect(table('sequence;at;netGrams', `7;${at};`)).toBe('field-missing');
    expect(table('sequence;at;netGrams', `"7;${at};1`)).toBe('weight-quotes-not-closed');
    expect(table('sequence;at;weight', `7;${at};1`)).toBe('weight-column-unknown');
    expect(table('sequence;at;at', `7;${at};1`)).toBe('weight-given-twice');
    expect(table('sequence;at;netGrams;rejected', `7;${at};1;maybe`)).toBe('field-not-flag');
    expect(table('sequence;at;netGrams;head', `7;${at};1;256`)).toBe('field-not-whole');
  });

  it('means by the quick way exactly what it means by the long one', () => {
    const fields = {
      sequence: fc.oneof(fc.nat().map(String), fc.constantFrom('007', '9007199254740993', '-1', '', '1e3', ' 7')),
      at: fc.constantFrom(at, '2026-03-12T08:41+01:00', '2026-03-12T24:00:00Z', `${at} `, '', '2026-02-30T00:00:00Z'),
      netGrams: fc.oneof(
        fc.integer({ min: -10, max: 3_000_000 }).map((net) => String(net / 1000)),
        fc.constantFrom('1003,2', '0.0005', '1.', '.5', '007.25', '99999999999999999999', '+1', '"1.5"', ''),
      ),
      head: fc.constantFrom('0', '13', '007', '255', '256', '-1', ''),
      rejected: fc.constantFrom('0', '1', '01', '2', 'yes', 'FALSE', ''),
      line: fc.constantFrom('1', '12', ' 1', '"1"', 'ü', ''),
      run: fc.constantFrom('PR-2026-000042', 'PR-2026-0000421', 'PR 2026', 'PR-2026-00004', ''),
    };
    const lines = fc.array(fc.record(fields), { minLength: 1, maxLength: 12 });
    const written = fc.record({
      lines,
      separator: fc.constantFrom(',', ';', '\t'),
      end: fc.constantFrom('\n', '\r\n'),
    });
    fc.assert(
      fc.property(written, ({ lines: said, separator, end }) => {
        const table = [Object.keys(fields), ...said.map((line) => Object.values(line))];
        const text = table.map((line) => line.join(separator) + end).join('');
        // A line that is cut into pieces goes the long way.
        expect(allOf(read('csv', text, text.length))).toEqual(allOf(read('csv', text, 7)));
      }),
      { numRuns: 3000, seed: 952 },
    );
  });

  it('rounds what is finer than a milligram, halves away from zero', () => {
    const net = (text: string): unknown => (table('sequence;at;netGrams', `7;${at};${text}`) as { net: number }).net;
    expect(net('0.0005')).toBe(1);
    expect(net('-0.0005')).toBe(-1);
    expect(net('1.00049')).toBe(1000);
    expect(net('1.0004999999999')).toBe(1000);
    expect(net('007.1')).toBe(7100);
  });
});
