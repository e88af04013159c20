import { Worker } from 'node:worker_threads';
import { builtUrl } from '../database/heavy-thread.js';
import { languages, type Language } from '../sentences/language.js';
import { sentencesOf } from '../sentences/sentences.js';

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

interface Waiting {
  readonly resolve: (bytes: Uint8Array) => void;
  readonly reject: (error: Error) => void;
}

/**
 * Draws papers one at a time in a thread of its own: what makes a PDF takes a paper in one go, and some take hundreds of
 * milliseconds. It begins with the first of them, and says what the house had to say by then.
 */
export class PaperThread {
  private worker: Worker | null = null;
  private asked = 0;
  private readonly waiting = new Map<number, Waiting>();

  draw(paper: PaperToDraw): Promise<Uint8Array> {
    const worker = (this.worker ??= this.begin());
    this.asked += 1;
    const message: DrawMessage = { ...paper, url: builtUrl(paper.url), number: this.asked };
    return new Promise((resolve, reject) => {
      this.waiting.set(message.number, { resolve, reject });
      worker.postMessage(message);
    });
  }

  async stop(): Promise<void> {
    await this.worker?.terminate();
    this.worker = null;
  }

  private begin(): Worker {
    const catalogue: Catalogue = languages.map((language) => [language, Object.fromEntries(sentencesOf(language))]);
    const file = new URL('./draw-paper.worker.js', builtUrl(import.meta.url));
    const worker = new Worker(file, { workerData: catalogue });
    worker.unref();
    worker.on('message', (answer: DrawAnswer) => {
      const waiting = this.waiting.get(answer.number);
      this.waiting.delete(answer.number);
      if ('fault' in answer) waiting?.reject(new Error(answer.fault));
      else waiting?.resolve(answer.bytes);
    });
    worker.on('error', (error) => {
      for (const waiting of this.waiting.values()) waiting.reject(error);
      this.waiting.clear();
      this.worker = null;
    });
    return worker;
  }
}
