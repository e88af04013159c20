import type { BeforeApplicationShutdown } from '@nestjs/common';
import type { DataSource } from 'typeorm';
import { languageNow } from '../sentences/language.js';
import type { Databases } from './databases.js';
import type { HeavyQuestion } from './heavy-question.js';
import { builtUrl, HeavyThread } from './heavy-thread.js';
import { unchanging, type ReadFrom } from './reading.js';
import { plainStatement } from './sqlite-template.js';

/** So that a long report keeps nobody waiting who asks for less. Each costs some ten megabytes. */
const threadCount = 2;

/**
 * Reads that take over ten milliseconds, each in one snapshot, in worker threads with bare connections that can only
 * query, one at a time in each. A snapshot that is computed in the server itself takes, on PostgreSQL, a connection of
 * the server's own.
 */
export class HeavyReads implements BeforeApplicationShutdown {
  private readonly threads: readonly HeavyThread[];

  constructor(private readonly databases: Databases) {
    this.threads = Array.from({ length: threadCount }, () => new HeavyThread(databases.ground));
  }

  /** Runs `work` on one unchanging view of the database. */
  async snapshot<Answer>(work: (from: ReadFrom) => Promise<Answer>): Promise<Answer> {
    if (this.databases.kind === 'postgres') return snapshotOnPostgres(this.databases.reader, work);
    const thread = this.freest();
    return thread.inTurn(() => snapshotOnSqlite(thread, work));
  }

  /** Has a question answered on one unchanging view, all of it beside the server. JSON text. */
  async ask<Asked>(question: HeavyQuestion<Asked>, asked: Asked): Promise<string> {
    const thread = this.freest();
    return thread.inTurn(() => thread.text(builtUrl(question.url), asked, languageNow()));
  }

  async beforeApplicationShutdown(): Promise<void> {
    for (const thread of this.threads) await thread.stop();
  }

  private freest(): HeavyThread {
    return this.threads.reduce((best, thread) => (thread.queued < best.queued ? thread : best));
  }
}

async function snapshotOnSqlite<Answer>(
  thread: HeavyThread,
  work: (from: ReadFrom) => Promise<Answer>,
): Promise<Answer> {
  await thread.rows('BEGIN', []);
  try {
    return await work(
      unchanging({
        sql: async <Row>(strings: TemplateStringsArray, ...values: unknown[]) => {
          const { statement, parameters } = plainStatement(strings, values);
          return (await thread.rows(statement, parameters)) as Row[];
        },
      }),
    );
  } finally {
    await thread.rows('COMMIT', []);
  }
}

async function snapshotOnPostgres<Answer>(
  reader: DataSource,
  work: (from: ReadFrom) => Promise<Answer>,
): Promise<Answer> {
  const runner = reader.createQueryRunner();
  try {
    await runner.query('BEGIN TRANSACTION ISOLATION LEVEL REPEATABLE READ READ ONLY');
    const { manager } = runner;
    return await work(unchanging({ sql: (strings, ...values) => manager.sql(strings, ...values) }));
  } finally {
    await runner.query('COMMIT').catch(() => undefined);
    await runner.release();
  }
}
