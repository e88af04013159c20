import type { Worker } from 'node:worker_threads';

/** What a thread is asked and what it answers carry the same number. */
interface Numbered {
  readonly number: number;
}

interface Waiting<Answer> {
  readonly resolve: (answer: Answer) => void;
  readonly reject: (error: Error) => void;
}

/**
 * A thread that begins with the first thing that it is asked. One that fails takes with it what waits for it; the next
 * question begins another. It keeps no process alive.
 */
export class AnsweringThread<Message extends Numbered, Answer extends Numbered> {
  private worker: Worker | null = null;
  private asked = 0;
  private readonly waiting = new Map<number, Waiting<Answer>>();

  constructor(private readonly make: () => Worker) {}

  ask(messageOf: (number: number) => Message): Promise<Answer> {
    const worker = (this.worker ??= this.begin());
    this.asked += 1;
    const message = messageOf(this.asked);
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
    const worker = this.make();
    worker.unref();
    worker.on('message', (answer: Answer) => {
      const waiting = this.waiting.get(answer.number);
      this.waiting.delete(answer.number);
      waiting?.resolve(answer);
    });
    worker.on('error', (error) => {
      for (const waiting of this.waiting.values()) waiting.reject(error);
      this.waiting.clear();
      this.worker = null;
    });
    return worker;
  }
}
