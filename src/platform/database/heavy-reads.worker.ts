import { parentPort, workerData } from 'node:worker_threads';
import { inConversation } from '../sentences/language.js';
import { writeInto } from '../threads/shared-places.js';
import { letOthersGoFirst } from '../threads/thread-priority.js';
import type { HeavyConnection, HeavyGround, HeavyWork } from './heavy-ground.js';
import { faultOf, type HeavyAnswer, type HeavyMessage, type HeavyQuestion } from './heavy-question.js';
import { unchanging } from './reading.js';
import { plainStatement } from './sqlite-template.js';
import { WaitedFor } from './waited-for.js';

/** A thread of heavy reads. It loads the driver of its own database alone. */
const { ground, isPatient, waitedFor: shared } = workerData as HeavyWork;
const waitedFor = new WaitedFor(shared);
if (isPatient) letOthersGoFirst();
const connection = await connect(ground);

async function connect(ground: HeavyGround): Promise<HeavyConnection> {
  if ('file' in ground) return (await import('./heavy-sqlite.js')).connectToSqlite(ground.file);
  return (await import('./heavy-postgres.js')).connectToPostgres(ground.url);
}

parentPort?.on('message', (message: HeavyMessage) => {
  void answerOf(message).then((answer) => parentPort?.postMessage(answer));
});

async function answerOf(message: HeavyMessage): Promise<HeavyAnswer> {
  const { number } = message;
  try {
    if ('statement' in message) return { number, rows: await connection.rows(message.statement, message.parameters) };
    const { url, asked, language, isReport, place } = message;
    const giveWay = isReport ? waitedFor.givingWay() : () => undefined;
    const { question } = (await import(url)) as { readonly question: HeavyQuestion<unknown> };
    const text = await inConversation(() => inOneView(question, asked, giveWay), language);
    const byteCount = place === null ? null : writeInto(place, text);
    return byteCount === null ? { number, text } : { number, byteCount };
  } catch (error) {
    return { number, fault: faultOf(error) };
  }
}

async function inOneView(question: HeavyQuestion<unknown>, asked: unknown, giveWay: () => void): Promise<string> {
  await connection.rows(connection.begin, []);
  try {
    return await question.answer(
      unchanging({
        sql: async <Row>(strings: TemplateStringsArray, ...values: unknown[]) => {
          const { statement, parameters } = plainStatement(strings, values);
          giveWay();
          return (await connection.rows(statement, parameters)) as Row[];
        },
      }),
      asked,
    );
  } finally {
    await connection.rows('COMMIT', []);
  }
}
