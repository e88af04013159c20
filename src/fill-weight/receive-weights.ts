import { Inject, Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Clock, type Instant } from '../platform/clock.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { Ids } from '../platform/ids.js';
import { BadForm, Refusal, type FieldProblem } from '../platform/refusal.js';
import { checkWeights, type CheckedWeights } from './incoming/check-weights.js';
import { encodeBatches, type EncodedBatch } from './incoming/encode-batches.js';
import { freshWeights, sequencesOf, type FreshWeights } from './incoming/fresh-weights.js';
import { countsByRun, firstRows, type FirstRow } from './incoming/first-rows.js';
import { newByTime } from './incoming/known-by-time.js';
import type { ReadWeights } from './incoming/read-weights.js';
import { lookAgainIfLate } from './incoming/look-again.js';
import { eachOnce } from './incoming/order-weights.js';
import { runsNamed, runsOfLineBetween } from './incoming/weighed-runs.js';
import { addToSummaries, type AddedWeights } from './kept/add-to-summaries.js';
import { instantOf } from './kept/instants-of-weights.js';
import type { PackWeigherRow } from './pack-weighers.js';
import { addRanges, countReceived, rangesBetween, type SeriesKey } from './received-ranges.js';
import { rangesOf, type SequenceRange } from './sequence-ranges.js';
import { WeightBatch } from './weight-batch.entity.js';

/** A batch that was read to its end. */
export interface ReadBatch {
  readonly weigher: PackWeigherRow;
  readonly read: ReadWeights;
  readonly series: string;
  /** What lines are of that name no run; null: what the line ran at their time. */
  readonly run: string | null;
  readonly line: string | null;
  /** Lines in error are left out; else they refuse the whole batch. */
  readonly skipsFaults: boolean;
  /** What a key of the request stands for; absent: it has no key. */
  readonly content?: object;
  /** SHA-256 of the file that it came in; absent: it came in none. */
  readonly fileDigest?: string;
  /** Its sequences are no counter of the machine: what is known is told by time and net, too. */
  readonly isKeyedByTime?: boolean;
}

/** What taking a batch would bring. */
export interface DryRun {
  readonly answer: WeightsAnswer;
  readonly runs: readonly { readonly number: string; readonly weightCount: number }[];
  /** The first lines as they were read. */
  readonly first: readonly FirstRow[];
}

export interface WeightsAnswer {
  /** Lines with something on them. */
  readonly lineCount: number;
  /** Weights that are new, and on disk now. */
  readonly acceptedCount: number;
  /** Weights that had been received before, or stand in the batch twice. */
  readonly repeatedCount: number;
  /** Lines in error that were left out. */
  readonly refusedCount: number;
  readonly problems: readonly FieldProblem[];
}

/** Another batch of the same series was written in between: look again. */
class Overtaken extends Error {}

const mostAttempts = 5;
/** Each gap costs a row of state. Our own value, no source. */
const mostGaps = 10_000;
const offsetPerCentisecond = 10;

/**
 * Takes a batch of weights: checked line by line, each sequence of a machine's series once, one entry in the journal.
 * A batch in which all is known already changes nothing and is answered as done.
 * Refusals: `too-many-gaps`; as a bad batch, line by line, all else that is wrong with it.
 */
@Injectable()
export class ReceiveWeights {
  constructor(
    private readonly changes: RecordChange,
    private readonly clock: Clock,
    private readonly ids: Ids,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  async execute(asked: Asked, batch: ReadBatch): Promise<WeightsAnswer> {
    const { read } = batch;
    moveByOffset(read, asked.deviceOffsetMilliseconds ?? 0);
    const { key, counted, repeatedCount } = await this.prepare(batch);
    const known = read.faults.count;
    for (let attempt = 1; attempt <= mostAttempts; attempt += 1) {
      // A second look finds again what the first one found to be wrong.
      read.faults.forgetAfter(known);
      const fresh = await freshWeights(this.reader, key, counted, read.faults);
      if (!batch.skipsFaults) refuseFaults(read);
      const answer = answerOf(read, fresh, repeatedCount);
      if (fresh.places.length === 0) return answer;
      const batches = await encodeBatches({ ...counted, places: fresh.places });
      const ranges = rangesOf(sequencesOf(read.rows, fresh.places));
      if (ranges.length > mostGaps) throw new Refusal('too-many-gaps', { gaps: ranges.length, most: mostGaps });
      try {
        return await this.write(asked, { batch, key, batches, ranges, answer });
      } catch (error) {
        if (!(error instanceof Overtaken)) throw error;
      }
    }
    throw new Refusal('still-being-recorded');
  }

  /** Looks at a batch as `execute` does, lines in error left out, and writes nothing. */
  async dryRun(batch: ReadBatch): Promise<DryRun> {
    const { read } = batch;
    const first = firstRows(read.rows);
    const { key, counted, repeatedCount } = await this.prepare(batch);
    const fresh = await freshWeights(this.reader, key, counted, read.faults);
    return { answer: answerOf(read, fresh, repeatedCount), runs: countsByRun(counted), first };
  }

  private async prepare(batch: ReadBatch) {
    const { rows, faults } = batch.read;
    const key = { deviceId: batch.weigher.deviceId, series: batch.series };
    const all = await this.check(batch);
    const places =
      batch.isKeyedByTime === true ? await newByTime(this.reader, key, { rows, checked: all }) : all.places;
    const checked = { ...all, places };
    const once = await eachOnce(rows, checked, faults);
    const repeatedCount = once.repeatedCount + all.places.length - places.length;
    return { key, counted: { places: once.places, rows, checked: all }, repeatedCount };
  }

  private async check({ weigher, read, run, line }: ReadBatch): Promise<CheckedWeights> {
    const { rows } = read;
    const named = await runsNamed(this.reader, weigher, read.runs.all());
    const byQuery = run === null ? null : (await runsNamed(this.reader, weigher, [run]))[0];
    const unnamed = byQuery ?? (await this.runsByTime(weigher, read));
    const nowCentiseconds = Math.floor(Date.parse(this.clock.now()) / 10);
    const lineTexts = read.lines.all();
    if (line !== null) nameLine(read, line);
    return checkWeights(rows, { weigher, lineTexts, named, unnamed, nowCentiseconds }, read.faults);
  }

  private runsByTime(weigher: PackWeigherRow, { rows }: ReadWeights) {
    let [first, last] = [Infinity, -Infinity];
    for (let row = 0; row < rows.count; row += 1) {
      if (rows.runs[row] !== 0) continue;
      first = Math.min(first, rows.atCentiseconds[row] as number);
      last = Math.max(last, rows.atCentiseconds[row] as number);
    }
    if (first > last) return Promise.resolve([]);
    const leeway = 30_000;
    const [firstAt, lastAt] = [instantOf(first - leeway), instantOf(last + leeway)];
    return runsOfLineBetween(this.reader, weigher.lineId, { firstAt, lastAt });
  }

  private write(asked: Asked, { batch, key, batches, ranges, answer }: Written): Promise<WeightsAnswer> {
    const [first, last] = [ranges[0]?.from ?? 0, ranges.at(-1)?.to ?? 0];
    const content = batch.content ?? { series: key.series, digests: batches.map(({ digest }) => digest) };
    return this.changes.run(asked, content, async (tx, change) => {
      await countReceived(tx, key, { count: answer.acceptedCount, at: change.recordedAt });
      const touched = await rangesBetween(tx, key, { from: first - 1, to: last + 1 });
      refuseIfOvertaken(touched, ranges);
      const added: AddedWeights[] = [];
      for (const { run, columns, ...encoded } of batches) {
        const stands = { weigherId: batch.weigher.id, runId: run.id, series: key.series };
        const entry = { entryId: change.entryId, receivedAt: change.recordedAt };
        await tx.insert(WeightBatch, { id: this.ids.next(), ...stands, ...encoded, ...entry });
        added.push({ ...stands, nominalMilligrams: run.nominalMilligrams, columns });
      }
      await addToSummaries(tx, added);
      await addRanges(tx, key, { added: ranges, touched });
      await lookAgainIfLate(tx, { weigher: batch.weigher, batches, at: change.recordedAt, ids: this.ids });
      const runIds = [...new Set(batches.map(({ run }) => run.id))];
      return {
        answer,
        entry: {
          action: 'receive-weights',
          subject: { kind: 'pack-weigher', id: batch.weigher.id },
          touches: runIds.map((id) => ({ kind: 'packing-run', id })),
          after: {
            series: key.series,
            weightCount: answer.acceptedCount,
            repeatedCount: answer.repeatedCount,
            refusedCount: answer.refusedCount,
            firstSequence: first,
            lastSequence: last,
            firstAt: earliestOf(batches, change.recordedAt),
            batches: batches.map(forJournal),
            ...(batch.fileDigest === undefined ? {} : { fileDigest: batch.fileDigest }),
          },
        },
      };
    });
  }
}

interface Written {
  readonly batch: ReadBatch;
  readonly key: SeriesKey;
  readonly batches: readonly EncodedBatch[];
  readonly ranges: readonly SequenceRange[];
  readonly answer: WeightsAnswer;
}

function forJournal({ run, firstSequence, lastSequence, weightCount, digest }: EncodedBatch) {
  return { run: run.number, firstSequence, lastSequence, weightCount, digest };
}

/** When the earliest of them was weighed; a clock ahead of the house's does not make it later than now. */
function earliestOf(batches: readonly EncodedBatch[], now: Instant): Instant {
  return batches.reduce((earliest, { firstAt }) => (firstAt < earliest ? firstAt : earliest), now);
}

/** Lines that name no line are of the one that the query names. */
function nameLine(read: ReadWeights, line: string): void {
  const number = read.lines.ofText(line);
  const { rows } = read;
  for (let row = 0; row < rows.count; row += 1) if (rows.lines[row] === 0) rows.lines[row] = number;
}

/** Times of a device's clock, made the house's where the device said how far its clock is off. */
function moveByOffset({ rows }: ReadWeights, offsetMilliseconds: number): void {
  const offset = Math.round(offsetMilliseconds / offsetPerCentisecond);
  if (offset === 0) return;
  for (let row = 0; row < rows.count; row += 1) (rows.atCentiseconds[row] as number) -= offset;
}

function refuseFaults({ faults, lineCount }: ReadWeights): void {
  if (faults.count === 0) return;
  throw new BadForm(faults.problems(), 'weights-in-error', { wrong: faults.count, lines: lineCount });
}

function answerOf(read: ReadWeights, fresh: FreshWeights, repeatedInBatch: number): WeightsAnswer {
  return {
    lineCount: read.lineCount,
    acceptedCount: fresh.places.length,
    repeatedCount: fresh.repeatedCount + repeatedInBatch,
    refusedCount: read.faults.count,
    problems: read.faults.problems(),
  };
}

/** Both lists are ascending. @throws {Overtaken} where one of the new ranges was received meanwhile */
function refuseIfOvertaken(received: readonly SequenceRange[], added: readonly SequenceRange[]): void {
  let place = 0;
  for (const range of added) {
    while (place < received.length && (received[place]?.to ?? 0) < range.from) place += 1;
    if (place < received.length && (received[place]?.from ?? 0) <= range.to) throw new Overtaken();
  }
}
