import { Worker } from 'node:worker_threads';
import type { BeforeApplicationShutdown } from '@nestjs/common';
import type { DataSource } from 'typeorm';
import type { Databases } from './databases.js';
import type { ReadFrom } from './reading.js';

/** What the worker is asked: begin, one statement, or end of a snapshot. */
export interface HeavyQuestion {
  readonly number: number;
  readonly statement: string;
  readonly parameters: readonly unknown[];
}

/** What the worker answers. */
export type HeavyAnswer =
  { readonly number: number; readonly rows: readonly unknown[] } | { readonly number: number; readonly fault: string };

interface Waiting {
  readonly resolve: (rows: readonly unknown[]) => void;
  readonly reject: (error: Error) => void;
}

/**
 * Reads that take over ten milliseconds, each in one snapshot: on SQLite in a worker thread with a bare connection
 * that can only query, one at a time; on PostgreSQL on a connection of its own.
 */
export class HeavyReads implements BeforeApplicationShutdown {
  private worker: Worker | null = null;
  private turn: Promise<unknown> = Promise.resolve();
  private asked = 0;
  private readonly waiting = new Map<number, Waiting>();

  constructor(private readonly databases: Databases) {}

  /** Runs `work` on one unchanging view of the database. */
  async snapshot<Answer>(work: (from: ReadFrom) => Promise<Answer>): Promise<Answer> {
    if (this.databases.kind === 'postgres') return snapshotOnPostgres(this.databases.reader, work);
    const mine = this.turn.then(() => this.snapshotOnSqlite(work));
    this.turn = mine.catch(() => undefined);
    return mine;
  }

  async beforeApplicationShutdown(): Promise<void> {
    await this.turn;
    await this.worker?.terminate();
    this.worker = null;
  }

  private async snapshotOnSqlite<Answer>(work: (from: ReadFrom) => Promise<Answer>): Promise<Answer> {
    await this.ask('BEGIN', []);
    try {
      return await work({
        sql: async <Row>(strings: TemplateStringsArray, ...values: unknown[]) => {
          const { statement, parameters } = questionOf(strings, values);
          return (await this.ask(statement, parameters)) as Row[];
        },
      });
    } finally {
      await this.ask('COMMIT', []);
    }
  }

  private ask(statement: string, parameters: readonly unknown[]): Promise<readonly unknown[]> {
    const worker = (this.worker ??= this.begin());
    this.asked += 1;
    const question: HeavyQuestion = { number: this.asked, statement, parameters };
    return new Promise((resolve, reject) => {
      this.waiting.set(question.number, { resolve, reject });
      worker.postMessage(question);
    });
  }

  private begin(): Worker {
    const worker = new Worker(workerFile(), { workerData: { file: this.databases.file } });
    worker.unref();
    worker.on('message', (answer: HeavyAnswer) => {
      const waiting = this.waiting.get(answer.number);
      this.waiting.delete(answer.number);
      if ('rows' in answer) waiting?.resolve(answer.rows);
      else waiting?.reject(new Error(answer.fault));
    });
    worker.on('error', (error) => {
      for (const waiting of this.waiting.values()) waiting.reject(error);
      this.waiting.clear();
      this.worker = null;
    });
    return worker;
  }
}

/** A thread loads built JavaScript only; where this file runs as TypeScript (the tests), the built one stands in `dist`. */
function workerFile(): URL {
  return import.meta.url.endsWith('.ts')
    ? new URL('../../../dist/src/platform/database/heavy-reads.worker.js', import.meta.url)
    : new URL('./heavy-reads.worker.js', import.meta.url);
}

/** A tagged template as SQLite takes it, by the same rules as TypeORM's `sql`: functions spread lists or stand for text. */
function questionOf(
  strings: TemplateStringsArray,
  values: readonly unknown[],
): { statement: string; parameters: unknown[] } {
  const parameters: unknown[] = [];
  const place = (value: unknown): string => {
    if (value === null) return 'NULL';
    if (typeof value === 'function') {
      const made: unknown = (value as () => unknown)();
      if (typeof made === 'string') return made;
      if (!Array.isArray(made) || made.length === 0) throw new Error('a list in a query is empty or no list');
      return made.map((item: unknown) => place(item)).join(', ');
    }
    parameters.push(typeof value === 'boolean' ? Number(value) : value);
    return '?';
  };
  const statement = strings.reduce(
    (text, part, index) => text + part + (index < values.length ? place(values[index]) : ''),
    '',
  );
  return { statement, parameters };
}

async function snapshotOnPostgres<Answer>(
  reader: DataSource,
  work: (from: ReadFrom) => Promise<Answer>,
): Promise<Answer> {
  const runner = reader.createQueryRunner();
  try {
    await runner.query('BEGIN TRANSACTION ISOLATION LEVEL REPEATABLE READ READ ONLY');
    return await work(runner.manager);
  } finally {
    await runner.query('COMMIT').catch(() => undefined);
    await runner.release();
  }
}
