import { AsyncLocalStorage } from 'node:async_hooks';
import { IsNull, type DataSource, type EntityTarget, type ObjectLiteral, type QueryRunner } from 'typeorm';
import type { Databases } from './databases.js';
import type { ReadFrom } from './reading.js';
import { deleteStatement, insertStatements, updateStatement } from './row-statements.js';
import { done, statementOf, type Outcome, type Statement } from './statement.js';

/** Plain values of an entity's columns; null in a `where` means "is null". */
export type Columns<Row> = { [Key in keyof Row]?: Row[Key] | undefined };

/** An open unit: everything a command reads and writes goes through it, and nothing after it has ended. */
export interface Tx extends ReadFrom {
  insert<Row extends ObjectLiteral>(
    entity: EntityTarget<Row>,
    rows: Columns<Row> | readonly Columns<Row>[],
  ): Promise<void>;
  /** Changes the rows that `where` finds and answers how many they were: the guard against races. */
  update<Row extends ObjectLiteral>(entity: EntityTarget<Row>, where: Columns<Row>, set: Columns<Row>): Promise<number>;
  /** Only for what is not a fact (`design.md` 3.1). */
  remove<Row extends ObjectLiteral>(entity: EntityTarget<Row>, where: Columns<Row>): Promise<number>;
  find<Row extends ObjectLiteral>(entity: EntityTarget<Row>, where: Columns<Row>): Promise<Row[]>;
  findOne<Row extends ObjectLiteral>(entity: EntityTarget<Row>, where: Columns<Row>): Promise<Row | null>;
}

const openUnit = new AsyncLocalStorage<true>();

/**
 * Runs one piece of work in one transaction. On SQLite the units queue, one at a time, since the process has one
 * writing connection; on PostgreSQL they run side by side. A unit inside a unit throws.
 */
export class UnitOfWork {
  private turn: Promise<unknown> = Promise.resolve();

  constructor(private readonly databases: Databases) {}

  async run<Answer>(work: (tx: Tx) => Promise<Answer>): Promise<Answer> {
    if (openUnit.getStore()) throw new Error('a unit of work was opened inside another');
    return openUnit.run(true, () =>
      this.databases.kind === 'sqlite'
        ? this.inTurn(() => runOnSqlite(this.databases.writer, work))
        : runOnPostgres(this.databases.writer, work),
    );
  }

  /** Runs the work as a unit would and takes all of it back: nothing stays but the answer. */
  async rehearse<Answer>(work: (tx: Tx) => Promise<Answer>): Promise<Answer> {
    try {
      await this.run(async (tx) => {
        throw new TakenBack(await work(tx));
      });
    } catch (error) {
      if (error instanceof TakenBack) return error.answer as Answer;
      throw error;
    }
    throw new Error('a rehearsal was not taken back');
  }

  /** Waits until no unit runs (a graceful stop). */
  async idle(): Promise<void> {
    await this.turn;
  }

  private inTurn<Answer>(run: () => Promise<Answer>): Promise<Answer> {
    const mine = this.turn.then(run);
    this.turn = mine.catch(() => undefined);
    return mine;
  }
}

/** Carries the answer of a rehearsal past the rollback. */
class TakenBack extends Error {
  constructor(readonly answer: unknown) {
    super('a rehearsal is taken back');
  }
}

async function runOnSqlite<Answer>(writer: DataSource, work: (tx: Tx) => Promise<Answer>): Promise<Answer> {
  // The driver hands everybody one runner; a fresh one a unit makes a forgotten await fail instead of joining the next.
  const driver = writer.driver as unknown as { queryRunner: QueryRunner | undefined };
  driver.queryRunner = undefined;
  const runner = writer.createQueryRunner();
  driver.queryRunner = undefined;
  keepPrepared(writer, runner);
  return inTransaction(runner, 'BEGIN IMMEDIATE', work);
}

const preparedOf = new WeakMap<DataSource, Map<string, unknown>>();

/** A runner keeps the statements that it prepared; those of all units of a database are kept together, so that none is prepared anew in each. */
function keepPrepared(writer: DataSource, runner: QueryRunner): void {
  const prepared = preparedOf.get(writer) ?? new Map<string, unknown>();
  preparedOf.set(writer, prepared);
  (runner as unknown as { stmtCache: Map<string, unknown> }).stmtCache = prepared;
}

async function runOnPostgres<Answer>(writer: DataSource, work: (tx: Tx) => Promise<Answer>): Promise<Answer> {
  for (let attempt = 1; ; attempt += 1) {
    try {
      const runner = writer.createQueryRunner();
      return await inTransaction(runner, `BEGIN; SET LOCAL lock_timeout = '5s'`, work);
    } catch (error) {
      if (attempt >= 5 || !wantsAnotherTry(error)) throw error;
    }
  }
}

/** A deadlock or a serialization failure: PostgreSQL asks for the whole unit again. */
function wantsAnotherTry(error: unknown): boolean {
  const code = (error as { code?: unknown } | null)?.code;
  return code === '40P01' || code === '40001';
}

async function inTransaction<Answer>(
  runner: QueryRunner,
  opening: string,
  work: (tx: Tx) => Promise<Answer>,
): Promise<Answer> {
  const unit = new OpenUnit(runner);
  try {
    await runner.query(opening);
    const answer = await work(unit);
    unit.end();
    await runner.query('COMMIT');
    return answer;
  } catch (error) {
    unit.end();
    await runner.query('ROLLBACK').catch(() => undefined);
    throw error;
  } finally {
    await runner.release();
  }
}

class OpenUnit implements Tx {
  private readonly source: DataSource;
  private ended = false;

  constructor(private readonly runner: QueryRunner) {
    this.source = runner.dataSource;
  }

  end(): void {
    this.ended = true;
  }

  async sql<Row>(strings: TemplateStringsArray, ...values: unknown[]): Promise<Row[]> {
    return (await this.do(statementOf(this.source, strings, values))).rows as Row[];
  }

  async insert<Row extends ObjectLiteral>(
    entity: EntityTarget<Row>,
    rows: Columns<Row> | readonly Columns<Row>[],
  ): Promise<void> {
    const all = (Array.isArray(rows) ? rows : [rows]) as readonly Columns<Row>[];
    for (const statement of insertStatements(this.source, entity, all)) await this.do(statement);
  }

  async update<Row extends ObjectLiteral>(
    entity: EntityTarget<Row>,
    where: Columns<Row>,
    set: Columns<Row>,
  ): Promise<number> {
    return (await this.do(updateStatement(this.source, entity, { where, set }))).affected;
  }

  async remove<Row extends ObjectLiteral>(entity: EntityTarget<Row>, where: Columns<Row>): Promise<number> {
    return (await this.do(deleteStatement(this.source, entity, where))).affected;
  }

  async find<Row extends ObjectLiteral>(entity: EntityTarget<Row>, where: Columns<Row>): Promise<Row[]> {
    return this.open().manager.find(entity, { where: whereOf(where) as never });
  }

  async findOne<Row extends ObjectLiteral>(entity: EntityTarget<Row>, where: Columns<Row>): Promise<Row | null> {
    return this.open().manager.findOne(entity, { where: whereOf(where) as never });
  }

  private do(statement: Statement): Promise<Outcome> {
    return done(this.open(), statement);
  }

  private open(): QueryRunner {
    if (this.ended) throw new Error('a statement came after its unit of work had ended: an await is missing');
    return this.runner;
  }
}

/** `where` as TypeORM takes it; an empty one is a mistake, never "all rows". */
function whereOf(where: Columns<ObjectLiteral>): ObjectLiteral {
  const conditions = Object.entries(where).filter(([, value]) => value !== undefined);
  if (conditions.length === 0) throw new RangeError('a where without any condition');
  return Object.fromEntries(conditions.map(([key, value]) => [key, value === null ? IsNull() : (value as unknown)]));
}
