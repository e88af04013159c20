import type { SentWeight } from './sent-weight.js';

/** Weights as they came, in columns that grow: a million of them take 34 MB and nothing else. */
export class WeightRows {
  count = 0;
  sequences = new Float64Array(4096);
  atCentiseconds = new Float64Array(4096);
  netMilligrams = new Float64Array(4096);
  heads = new Int16Array(4096);
  rejected = new Int8Array(4096);
  lines = new Uint16Array(4096);
  runs = new Uint16Array(4096);
  /** Which line of what was sent each came from, counted from 1. */
  lineNumbers = new Uint32Array(4096);

  add(weight: SentWeight, lineNumber: number): void {
    const place = this.count;
    if (place === this.sequences.length) this.grow();
    this.sequences[place] = weight.sequence;
    this.atCentiseconds[place] = weight.atCentiseconds;
    this.netMilligrams[place] = weight.netMilligrams;
    this.heads[place] = weight.head;
    this.rejected[place] = weight.rejected;
    this.lines[place] = weight.line;
    this.runs[place] = weight.run;
    this.lineNumbers[place] = lineNumber;
    this.count = place + 1;
  }

  /** Leaves its columns to another batch; holds nothing more itself. */
  leaveTo(next: WeightRows): void {
    Object.assign(next, this, { count: 0 });
    Object.assign(this, new WeightRows());
  }

  private grow(): void {
    const size = this.sequences.length * 2;
    this.sequences = grown(this.sequences, new Float64Array(size));
    this.atCentiseconds = grown(this.atCentiseconds, new Float64Array(size));
    this.netMilligrams = grown(this.netMilligrams, new Float64Array(size));
    this.heads = grown(this.heads, new Int16Array(size));
    this.rejected = grown(this.rejected, new Int8Array(size));
    this.lines = grown(this.lines, new Uint16Array(size));
    this.runs = grown(this.runs, new Uint16Array(size));
    this.lineNumbers = grown(this.lineNumbers, new Uint32Array(size));
  }
}

/** Columns of more rows are set aside for few batches, and are not kept. */
const mostRowsKept = 65_536;
const mostKept = 2;
const kept: WeightRows[] = [];

/** Rows for a batch: columns that an earlier one has left, where there are any. */
export function rowsForBatch(): WeightRows {
  return kept.pop() ?? new WeightRows();
}

/**
 * Keeps the columns of a batch that is done for the next one. What is set aside anew for each batch outlives it, until the
 * whole heap is tidied up; and that costs more than the batch.
 */
export function keepForNext(rows: WeightRows): void {
  if (kept.length >= mostKept || rows.sequences.length > mostRowsKept) return;
  const next = new WeightRows();
  rows.leaveTo(next);
  kept.push(next);
}

function grown<Column extends { set(from: Column): void }>(from: Column, into: Column): Column {
  into.set(from);
  return into;
}
