import type { BeforeApplicationShutdown } from '@nestjs/common';
import type { DataSource } from 'typeorm';
import { builtUrl } from '../threads/built-url.js';
import { SharedPlaces, type HeldAnswer } from '../threads/shared-places.js';
import type { Databases } from './databases.js';
import type { HeavyQuestion, WholeQuestion } from './heavy-question.js';
import { HeavyThread } from './heavy-thread.js';
import { unchanging, type ReadFrom } from './reading.js';
import { plainStatement } from './sqlite-template.js';
import { WaitedFor } from './waited-for.js';

/**
 * Reads that take over ten milliseconds, each in one snapshot, in worker threads with bare connections that can only
 * query, one at a time in each. One is for reports and for what nobody looks at: the system lets all others go before
 * it, a report gives way to what somebody waits for, and nothing else waits behind one. A snapshot that is computed in
 * the server itself takes, on PostgreSQL, a connection of the server's own.
 */
export class HeavyReads implements BeforeApplicationShutdown {
  private readonly waitedFor = new WaitedFor();
  private readonly prompt: HeavyThread;
  private readonly patient: HeavyThread;

  constructor(private readonly databases: Databases) {
    const common = { ground: databases.ground, waitedFor: this.waitedFor.shared };
    const places = new SharedPlaces();
    this.prompt = new HeavyThread({ ...common, isPatient: false }, places);
    this.patient = new HeavyThread({ ...common, isPatient: true }, places);
  }

  /** Runs `work` on one unchanging view of the database. */
  async snapshot<Answer>(work: (from: ReadFrom) => Promise<Answer>): Promise<Answer> {
    return this.waited(() => this.snapshotBy(this.promptest(), work));
  }

  /** The same for what nobody waits for. */
  async patientSnapshot<Answer>(work: (from: ReadFrom) => Promise<Answer>): Promise<Answer> {
    return this.snapshotBy(this.patient, work);
  }

  /** Has a question answered on one unchanging view, all of it beside the server. JSON text. */
  async ask<Asked>(question: HeavyQuestion<Asked>, asked: Asked): Promise<string> {
    return this.waited(() => text(this.promptest(), { question, asked, isReport: false }));
  }

  /** The same to be sent as it is: it stays in memory that the thread shares until it is given back. */
  async askHeld<Asked>(question: HeavyQuestion<Asked>, asked: Asked): Promise<HeldAnswer> {
    return this.waited(() => held(this.promptest(), { question, asked, isReport: false }));
  }

  /** The same for a report and for what nobody looks at: it waits for its like, and what somebody waits for goes before it. */
  async report<Asked>(question: HeavyQuestion<Asked>, asked: Asked): Promise<string> {
    return text(this.patient, { question, asked, isReport: true });
  }

  /** A report to be sent as it is. */
  async reportHeld<Asked>(question: HeavyQuestion<Asked>, asked: Asked): Promise<HeldAnswer> {
    return held(this.patient, { question, asked, isReport: true });
  }

  async beforeApplicationShutdown(): Promise<void> {
    for (const thread of [this.prompt, this.patient]) await thread.stop();
  }

  private async snapshotBy<Answer>(thread: HeavyThread, work: (from: ReadFrom) => Promise<Answer>): Promise<Answer> {
    if (this.databases.kind === 'postgres') return snapshotOnPostgres(this.databases.reader, work);
    return thread.inTurn(() => snapshotOnSqlite(thread, work));
  }

  /** Reports give way meanwhile. */
  private async waited<Answer>(work: () => Promise<Answer>): Promise<Answer> {
    this.waitedFor.add();
    try {
      return await work();
    } finally {
      this.waitedFor.remove();
    }
  }

  /** For what somebody waits for. Where that is busy and there is no report, the other helps. */
  private promptest(): HeavyThread {
    return this.prompt.queued > 0 && this.patient.queued === 0 ? this.patient : this.prompt;
  }
}

interface Asking<Asked> {
  readonly question: HeavyQuestion<Asked>;
  readonly asked: Asked;
  readonly isReport: boolean;
}

function wholeOf<Asked>({ question, ...asking }: Asking<Asked>): WholeQuestion {
  return { url: builtUrl(question.url), ...asking };
}

function text<Asked>(thread: HeavyThread, asking: Asking<Asked>): Promise<string> {
  return thread.inTurn(() => thread.text(wholeOf(asking)));
}

function held<Asked>(thread: HeavyThread, asking: Asking<Asked>): Promise<HeldAnswer> {
  return thread.inTurn(() => thread.held(wholeOf(asking)));
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
