import { parentPort, workerData } from 'node:worker_threads';
import Database from 'better-sqlite3';
import type { HeavyAnswer, HeavyQuestion } from './heavy-reads.js';

/** The thread of heavy reads: a bare connection that can only query. */
const { file } = workerData as { file: string };
const database = new Database(file, { fileMustExist: true });
database.pragma('query_only = ON');

parentPort?.on('message', ({ number, statement, parameters }: HeavyQuestion) => {
  parentPort?.postMessage(answerOf(number, statement, parameters));
});

function answerOf(number: number, statement: string, parameters: readonly unknown[]): HeavyAnswer {
  try {
    const prepared = database.prepare(statement);
    if (prepared.reader) return { number, rows: prepared.all(...parameters) };
    prepared.run(...parameters);
    return { number, rows: [] };
  } catch (error) {
    return { number, fault: error instanceof Error ? error.message : String(error) };
  }
}
