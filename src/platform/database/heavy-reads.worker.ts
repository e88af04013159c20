import { parentPort, workerData } from 'node:worker_threads';
import Database from 'better-sqlite3';
import { inConversation } from '../sentences/language.js';
import { cacheOf } from './sqlite-cache.js';
import { faultOf, type HeavyAnswer, type HeavyMessage, type HeavyQuestion } from './heavy-question.js';
import { unchanging } from './reading.js';
import { plainStatement } from './sqlite-template.js';

/** A thread of heavy reads: a bare connection that can only query. */
const { file } = workerData as { file: string };
const database = new Database(file, { fileMustExist: true });
database.pragma('query_only = ON');
database.pragma(cacheOf('heavy'));

parentPort?.on('message', (message: HeavyMessage) => {
  void answerOf(message).then((answer) => parentPort?.postMessage(answer));
});

async function answerOf(message: HeavyMessage): Promise<HeavyAnswer> {
  const { number } = message;
  try {
    if ('statement' in message) return { number, rows: rowsOf(message.statement, message.parameters) };
    const { url, asked, language } = message;
    const { question } = (await import(url)) as { readonly question: HeavyQuestion<unknown> };
    return { number, text: await inConversation(() => inOneView(question, asked), language) };
  } catch (error) {
    return { number, fault: faultOf(error) };
  }
}

async function inOneView(question: HeavyQuestion<unknown>, asked: unknown): Promise<string> {
  rowsOf('BEGIN', []);
  try {
    return await question.answer(
      unchanging({
        sql: async <Row>(strings: TemplateStringsArray, ...values: unknown[]) => {
          const { statement, parameters } = plainStatement(strings, values);
          return rowsOf(statement, parameters) as Row[];
        },
      }),
      asked,
    );
  } finally {
    rowsOf('COMMIT', []);
  }
}

/** Statements that were asked before, the latest last; a list in a statement makes another one for each length. */
const known = new Map<string, Database.Statement>();
const mostKnown = 300;

function rowsOf(statement: string, parameters: readonly unknown[]): readonly unknown[] {
  const prepared = known.get(statement) ?? database.prepare(statement);
  known.delete(statement);
  known.set(statement, prepared);
  const [oldest] = known.keys();
  if (known.size > mostKnown && oldest !== undefined) known.delete(oldest);
  if (prepared.reader) return prepared.all(...parameters);
  prepared.run(...parameters);
  return [];
}
