import { Worker } from 'node:worker_threads';
import { languages, type Language } from '../sentences/language.js';
import { sentencesOf } from '../sentences/sentences.js';
import { AnsweringThread } from '../threads/answering-thread.js';
import { builtUrl } from '../threads/built-url.js';

/** A paper to be drawn: its facts, and the module that draws it. */
export interface PaperToDraw {
  readonly url: string;
  readonly facts: unknown;
  readonly issuedAt: string;
  readonly edition: string;
  readonly language: Language;
}

/** What the thread is asked, and what it answers. */
export type DrawMessage = PaperToDraw & { readonly number: number };
export type DrawAnswer = { readonly number: number } & ({ readonly bytes: Uint8Array } | { readonly fault: string });

/** What the house says, in each of its languages. */
export type Catalogue = readonly (readonly [Language, Readonly<Record<string, string>>])[];

/**
 * Draws papers one at a time in a thread of its own: what makes a PDF takes a paper in one go, and some take hundreds of
 * milliseconds. It begins with the first of them, and says what the house had to say by then.
 */
export class PaperThread {
  private readonly thread = new AnsweringThread<DrawMessage, DrawAnswer>(begin);

  async draw(paper: PaperToDraw): Promise<Uint8Array> {
    const answer = await this.thread.ask((number) => ({ ...paper, url: builtUrl(paper.url), number }));
    if ('fault' in answer) throw new Error(answer.fault);
    return answer.bytes;
  }

  stop(): Promise<void> {
    return this.thread.stop();
  }
}

function begin(): Worker {
  const catalogue: Catalogue = languages.map((language) => [language, Object.fromEntries(sentencesOf(language))]);
  return new Worker(new URL('./draw-paper.worker.js', builtUrl(import.meta.url)), { workerData: catalogue });
}
