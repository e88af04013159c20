import type { SentenceFacts } from '../../platform/refusal.js';
import { BadForm } from '../../platform/refusal.js';
import type { CsvColumn, CsvLayout } from '../incoming/csv-layout.js';
import { unquoted } from '../incoming/quoted-fields.js';
import { instantOfBytes } from '../incoming/instant-bytes.js';
import { LocalClock, type DayOrder } from './local-clock.js';

/** What the columns of a weigher's files mean. A column is named by its number, counted from 1, or by its heading. */
export interface SavedLayout {
  readonly separator: keyof typeof separators;
  readonly decimal: 'point' | 'comma';
  /** Lines before the first weight; the last of them holds the headings. */
  readonly headerLines: number;
  /** Null: the file has none, and the place of the line in it is the sequence. */
  readonly sequenceColumn: string | null;
  readonly timeColumn: string;
  /** Null: the time stands with its date in one column. */
  readonly dayColumn: string | null;
  readonly netColumn: string;
  readonly headColumn: string | null;
  readonly rejectColumn: string | null;
  readonly runColumn: string | null;
  /** How the file writes that a pack was taken out, and that it was not; null: 1 and 0, yes and no, true and false. */
  readonly rejectWord: string | null;
  readonly acceptWord: string | null;
  /** `offset`: ISO 8601 with its offset. */
  readonly timeOrder: DayOrder | 'offset';
  readonly timeZone: string;
  readonly unit: keyof typeof netFields;
  /** Names the counter of the sequences. */
  readonly series: string;
}

export const separators = { semicolon: ';', comma: ',', tab: '\t' } as const;
export const netFields = { g: 'netGrams', kg: 'netKilograms', mg: 'netMilligrams' } as const;
const decoder = new TextDecoder('utf-8', { fatal: true });

/**
 * How a file is read, by what was saved and by its headings.
 *
 * @param headings the line that names the columns, or where there is none the first line: it tells how many there are
 * @throws {BadForm} naming the column that the file does not have
 */
export function csvLayoutOf(saved: SavedLayout, headings: Uint8Array): CsvLayout {
  const separator = separators[saved.separator];
  const names = fieldsOf(headings, separator);
  const columns = names.map((): CsvColumn => null);
  for (const [field, named, meaning] of meanings(saved)) {
    if (named === null) continue;
    const place = placeOf(named, names, saved.headerLines > 0);
    if (place === null) {
      const found = names.join(' | ').slice(0, 200);
      throw problem(field, 'file-column-missing', { column: named, count: names.length, found });
    }
    if (columns[place] !== null) throw problem(field, 'file-column-twice', { column: named });
    columns[place] = meaning;
  }
  const clock = saved.timeOrder === 'offset' ? null : new LocalClock(saved.timeOrder, saved.timeZone);
  return {
    separator: separator.charCodeAt(0),
    columns,
    instantOf: clock === null ? instantOfBytes : (bytes, start, end) => clock.instantOf(textOf(bytes, start, end)),
    decimal: saved.decimal,
    countsLines: saved.sequenceColumn === null,
    ...(clock === null || saved.dayColumn === null ? {} : { dayClock: dayClockOf(clock) }),
    ...(saved.rejectWord === null && saved.acceptWord === null ? {} : { marks: marksOf(saved) }),
  };
}

function meanings(saved: SavedLayout): readonly (readonly [string, string | null, CsvColumn])[] {
  return [
    ['sequenceColumn', saved.sequenceColumn, 'sequence'],
    ['timeColumn', saved.timeColumn, saved.dayColumn === null ? 'at' : 'clock'],
    ['dayColumn', saved.dayColumn, 'day'],
    ['netColumn', saved.netColumn, netFields[saved.unit]],
    ['headColumn', saved.headColumn, 'head'],
    ['rejectColumn', saved.rejectColumn, 'rejected'],
    ['runColumn', saved.runColumn, 'run'],
  ];
}

function placeOf(named: string, names: readonly string[], hasHeadings: boolean): number | null {
  const byName = hasHeadings ? names.findIndex((name) => name.toLowerCase() === named.toLowerCase()) : -1;
  if (byName >= 0) return byName;
  const number = /^\d{1,3}$/.test(named) ? Number(named) : 0;
  return number >= 1 && number <= names.length ? number - 1 : null;
}

/** Headings may be written in an older character set: then they are read as Latin-1. */
function fieldsOf(line: Uint8Array, separator: string): readonly string[] {
  const fields = unquoted(line, separator) ?? latin(line).split(separator);
  return fields.map((field) => field.trim());
}

function latin(line: Uint8Array): string {
  try {
    return decoder.decode(line);
  } catch {
    return Buffer.from(line).toString('latin1');
  }
}

function dayClockOf(clock: LocalClock): NonNullable<CsvLayout['dayClock']> {
  return {
    dayOf: (bytes, start, end) => clock.dayOf(textOf(bytes, start, end)),
    clockOf: (bytes, start, end) => clock.clockOf(textOf(bytes, start, end)),
    instantOf: (wall) => clock.instantOfWall(wall),
  };
}

/** What is neither word is a fault of its line; an empty field says nothing. */
function marksOf({ rejectWord, acceptWord }: SavedLayout): NonNullable<CsvLayout['marks']> {
  const [yes, no] = [rejectWord?.toLowerCase() ?? null, acceptWord?.toLowerCase() ?? null];
  return (text) => {
    const word = text.toLowerCase();
    if (word === yes) return 1;
    if (word === no) return 0;
    return -1;
  };
}

/** A file writes its times in a few letters. */
const longestTime = 40;

function textOf(bytes: Uint8Array, start: number, end: number): string {
  return end - start > longestTime ? '' : String.fromCharCode(...bytes.subarray(start, end));
}

function problem(field: string, code: string, facts: SentenceFacts): BadForm {
  return new BadForm([{ field, code, facts }]);
}
