import type { BenchWeigher } from './weigher-plant.js';

/** A batch as it goes over the wire, ready made. */
export interface ReadyBatch {
  readonly token: string;
  readonly body: Buffer;
  readonly lineCount: number;
}

/** Batches of one weigher after the other, by turns: `linesEach` lines of JSON (or CSV) in each. */
export function readyBatches(
  weighers: readonly BenchWeigher[],
  { batchesEach, linesEach, type }: { batchesEach: number; linesEach: number; type: 'ndjson' | 'csv' },
): ReadyBatch[] {
  return Array.from({ length: batchesEach * weighers.length }, (_, number) =>
    batchOf(weighers, { number, linesEach, type }),
  );
}

/** One of them: the weighers have their turns. */
export function batchOf(
  weighers: readonly BenchWeigher[],
  { number, linesEach, type }: { number: number; linesEach: number; type: 'ndjson' | 'csv' },
): ReadyBatch {
  const weigher = weighers[number % weighers.length];
  if (weigher === undefined) throw new RangeError('a batch of no weigher');
  const { token, run } = weigher;
  const line = type === 'ndjson' ? jsonLine : csvLine;
  const at = new Date().toISOString();
  const first = Math.floor(number / weighers.length) * linesEach;
  const lines = Array.from({ length: linesEach }, (_, place) => line(first + place, at, run));
  const header = type === 'csv' ? 'sequence,at,netGrams,head,rejected,run\n' : '';
  return { token, body: Buffer.from(header + lines.join('')), lineCount: linesEach };
}

/** A weight that looks random and follows from its sequence, in steps of 0.2 g about 2 002 g. */
function gramsOf(sequence: number): string {
  return (2002 + (((sequence * 7919) % 101) - 50) / 5).toFixed(1);
}

function jsonLine(sequence: number, at: string, run: string): string {
  return `{"sequence":${sequence},"at":"${at}","netGrams":${gramsOf(sequence)},"head":${sequence % 14},"rejected":false,"run":"${run}"}\n`;
}

function csvLine(sequence: number, at: string, run: string): string {
  return `${sequence},${at},${gramsOf(sequence)},${sequence % 14},0,${run}\n`;
}
