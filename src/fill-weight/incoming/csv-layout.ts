import type { WeightField } from './sent-weight.js';

/** What the columns of a table of weights mean, in their order; null: a column that is passed over. */
export interface CsvLayout {
  /** The byte between two fields: a comma, a semicolon or a tab. */
  readonly separator: number;
  readonly columns: readonly CsvColumn[];
  /** Reads a time; hundredths of a second since 1970 UTC, NaN where it cannot be read. */
  readonly instantOf: ReadBytes;
  /** What stands before decimals, where that was said; else a point, or a comma where no comma parts fields. */
  readonly decimal?: 'point' | 'comma';
  /** No column counts packs: the number of the line is the sequence. */
  readonly countsLines?: boolean;
  /** Where date and time stand in columns of their own: how each is read, and what both together mean. */
  readonly dayClock?: {
    readonly dayOf: ReadBytes;
    readonly clockOf: ReadBytes;
    readonly instantOf: (wall: number) => number;
  };
  /** Reads a mark: 1 taken out, 0 not, −1 neither of the two. */
  readonly marks?: (text: string) => number;
}

export type CsvColumn = WeightField | 'netKilograms' | 'day' | 'clock' | null;
type ReadBytes = (bytes: Uint8Array, start: number, end: number) => number;
