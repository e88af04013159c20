import { setFlagsFromString } from 'node:v8';
import { Worker } from 'node:worker_threads';
import type { HeavyGround, HeavyManner, HeavyWork } from './heavy-ground.js';
import { errorOf, type HeavyAnswer, type HeavyMessage } from './heavy-question.js';

interface Waiting {
  readonly resolve: (answer: HeavyAnswer) => void;
  readonly reject: (error: Error) => void;
}

/** One thread with a bare connection that can only query; what is given to it waits for its turn. */
export class HeavyThread {
  /** How many are waiting or under way. */
  queued = 0;
  private worker: Worker | null = null;
  private turn: Promise<unknown> = Promise.resolve();
  private asked = 0;
  private readonly waiting = new Map<number, Waiting>();

  constructor(
    private readonly ground: HeavyGround,
    private readonly manner: HeavyManner,
  ) {}

  /** Runs `work`, in which the thread is asked, after what came before. */
  async inTurn<Answer>(work: () => Promise<Answer>): Promise<Answer> {
    this.queued += 1;
    const mine = this.turn.then(work).finally(() => {
      this.queued -= 1;
    });
    this.turn = mine.catch(() => undefined);
    return mine;
  }

  async rows(statement: string, parameters: readonly unknown[]): Promise<readonly unknown[]> {
    const answer = await this.ask((number) => ({ number, statement, parameters }));
    return 'rows' in answer ? answer.rows : [];
  }

  async text(url: string, asked: unknown, language: 'en' | 'es'): Promise<string> {
    const answer = await this.ask((number) => ({ number, url, asked, language }));
    return 'text' in answer ? answer.text : '';
  }

  async stop(): Promise<void> {
    await this.turn;
    await this.worker?.terminate();
    this.worker = null;
  }

  private ask(messageOf: (number: number) => HeavyMessage): Promise<HeavyAnswer> {
    const worker = (this.worker ??= this.begin());
    this.asked += 1;
    const message = messageOf(this.asked);
    return new Promise((resolve, reject) => {
      this.waiting.set(message.number, { resolve, reject });
      worker.postMessage(message);
    });
  }

  private begin(): Worker {
    withdrawHeapFlags();
    const worker = new Worker(workerFile(), {
      workerData: { ground: this.ground, ...this.manner } satisfies HeavyWork,
      resourceLimits: this.manner.isPatient ? patientLimits : promptLimits,
    });
    worker.unref();
    worker.on('message', (answer: HeavyAnswer) => {
      const waiting = this.waiting.get(answer.number);
      this.waiting.delete(answer.number);
      if ('fault' in answer) waiting?.reject(errorOf(answer.fault));
      else waiting?.resolve(answer);
    });
    worker.on('error', (error) => {
      for (const waiting of this.waiting.values()) waiting.reject(error);
      this.waiting.clear();
      this.worker = null;
    });
    return worker;
  }
}

/**
 * Far more than any question takes. Above two gigabytes the engine lets a heap grow to four times what lives in it before
 * it collects the whole, below to a third more; with each whole collection it forgets the machine code of all callbacks,
 * which costs more than the collection. What nobody waits for makes do with less memory:
 * docs/decisions/0043-what-a-heavy-thread-loads.md.
 */
const promptLimits = { maxOldGenerationSizeMb: 2048, maxYoungGenerationSizeMb: 48 };
const patientLimits = { maxOldGenerationSizeMb: 512, maxYoungGenerationSizeMb: 24 };

/** What `npm start` says of the main thread's heap stands above the limits of any thread that begins later: withdrawn. */
function withdrawHeapFlags(): void {
  for (const flag of ['--max-old-space-size=0', '--max-semi-space-size=0']) setFlagsFromString(flag);
}

function workerFile(): URL {
  return new URL('./heavy-reads.worker.js', builtUrl(import.meta.url));
}

/** A thread loads built JavaScript only; where a module runs as TypeScript (the tests), the built one stands in `dist`. */
export function builtUrl(url: string): string {
  if (!url.endsWith('.ts')) return url;
  const root = new URL('../../../', import.meta.url).href;
  return `${root}dist/${url.slice(root.length).replace(/\.ts$/, '.js')}`;
}
