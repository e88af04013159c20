import { parentPort, workerData } from 'node:worker_threads';
import { addSentences } from '../sentences/sentences.js';
import { letOthersGoFirst } from '../threads/thread-priority.js';
import { inPaperLanguage } from './paper-language.js';
import type { DrawPaper } from './paper-renderers.js';
import type { Catalogue, DrawAnswer, DrawMessage } from './paper-thread.js';

/** A thread that draws papers, behind all others of the server. It loads what draws them, and no database. */
letOthersGoFirst();
for (const [language, sentences] of workerData as Catalogue) addSentences(language, sentences);

let turn: Promise<unknown> = Promise.resolve();

parentPort?.on('message', (message: DrawMessage) => {
  turn = turn.then(() => answerOf(message)).then((answer) => parentPort?.postMessage(answer));
});

async function answerOf({ number, url, facts, issuedAt, edition, language }: DrawMessage): Promise<DrawAnswer> {
  try {
    const { draw } = (await import(url)) as { readonly draw: DrawPaper };
    return { number, bytes: await inPaperLanguage(() => draw(facts, issuedAt, edition), language) };
  } catch (error) {
    return { number, fault: error instanceof Error ? (error.stack ?? error.message) : String(error) };
  }
}
