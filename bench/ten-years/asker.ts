import { fork, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import type { Answered } from './ask.js';
import type { Headers } from './sign-in.js';

export interface ToAsk {
  readonly number: number;
  readonly url: string;
  readonly headers: Headers;
  readonly body: object | null;
}

export type Told = { readonly number: number } & ({ readonly answered: Answered } | { readonly fault: string });

interface Waiting {
  readonly resolve: (answered: Answered) => void;
  readonly reject: (error: Error) => void;
}

/**
 * Somebody who asks, in a process that does nothing else: the bench itself holds the plant's questions, and what it collects
 * of them every half second would count as waiting.
 */
export class Asker {
  private readonly waiting = new Map<number, Waiting>();
  private asked = 0;

  private constructor(private readonly child: ChildProcess) {
    child.on('message', (told: Told) => {
      const waiting = this.waiting.get(told.number);
      this.waiting.delete(told.number);
      if ('answered' in told) waiting?.resolve(told.answered);
      else waiting?.reject(new Error(told.fault));
    });
  }

  static start(): Asker {
    return new Asker(fork(fileURLToPath(new URL('./asker.main.js', import.meta.url)), { execArgv: [] }));
  }

  ask(url: string, headers: Headers, body: object | null = null): Promise<Answered> {
    this.asked += 1;
    const toAsk: ToAsk = { number: this.asked, url, headers, body };
    return new Promise((resolve, reject) => {
      this.waiting.set(toAsk.number, { resolve, reject });
      this.child.send(toAsk);
    });
  }

  async stop(): Promise<void> {
    this.child.kill('SIGTERM');
    await once(this.child, 'exit');
  }
}
