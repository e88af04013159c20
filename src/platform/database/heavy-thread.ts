import { setFlagsFromString } from 'node:v8';
import { Worker } from 'node:worker_threads';
import { languageNow } from '../sentences/language.js';
import { AnsweringThread } from '../threads/answering-thread.js';
import { builtUrl } from '../threads/built-url.js';
import type { HeldAnswer, SharedPlaces } from '../threads/shared-places.js';
import type { HeavyWork } from './heavy-ground.js';
import { errorOf, type HeavyAnswer, type HeavyMessage, type WholeQuestion } from './heavy-question.js';

/** One thread with a bare connection that can only query; what is given to it waits for its turn. */
export class HeavyThread {
  /** How many are waiting or under way. */
  queued = 0;
  private turn: Promise<unknown> = Promise.resolve();
  private readonly thread: AnsweringThread<HeavyMessage, HeavyAnswer>;

  constructor(
    work: HeavyWork,
    private readonly places: SharedPlaces,
  ) {
    this.thread = new AnsweringThread(() => begin(work));
  }

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

  async text(whole: WholeQuestion): Promise<string> {
    const answer = await this.ask((number) => ({ number, ...whole, language: languageNow(), place: null }));
    return 'text' in answer ? answer.text : '';
  }

  /** The text as it is to be sent, in a place that the server shares with the thread; on its own where it has none. */
  async held(whole: WholeQuestion): Promise<HeldAnswer> {
    const place = this.places.take();
    let isWritten = false;
    try {
      const answer = await this.ask((number) => ({ number, ...whole, language: languageNow(), place }));
      isWritten = 'byteCount' in answer;
      if (place !== null && 'byteCount' in answer) return this.places.held(place, answer.byteCount);
      return { bytes: Buffer.from('text' in answer ? answer.text : ''), giveBack: () => undefined };
    } finally {
      if (place !== null && !isWritten) this.places.giveBack(place);
    }
  }

  async stop(): Promise<void> {
    await this.turn;
    await this.thread.stop();
  }

  private async ask(messageOf: (number: number) => HeavyMessage): Promise<HeavyAnswer> {
    const answer = await this.thread.ask(messageOf);
    if ('fault' in answer) throw errorOf(answer.fault);
    return answer;
  }
}

function begin(workerData: HeavyWork): Worker {
  withdrawHeapFlags();
  const resourceLimits = workerData.isPatient ? patientLimits : promptLimits;
  return new Worker(new URL('./heavy-reads.worker.js', builtUrl(import.meta.url)), { workerData, resourceLimits });
}

/**
 * Far more than any question takes. Above two gigabytes the engine would let a heap grow to four times what lives in it
 * before it collects the whole, which is a quarter less processor time and up to three hundred megabytes more: a large
 * question that is collected in its middle lives in many. Young halves are as small as the milliseconds allow:
 * docs/decisions/0052-where-the-memory-lies.md.
 */
const promptLimits = { maxOldGenerationSizeMb: 512, maxYoungGenerationSizeMb: 12 };
const patientLimits = { maxOldGenerationSizeMb: 512, maxYoungGenerationSizeMb: 3 };

/** What `npm start` says of the main thread's heap stands above the limits of any thread that begins later: withdrawn. */
function withdrawHeapFlags(): void {
  for (const flag of ['--max-old-space-size=0', '--max-semi-space-size=0']) setFlagsFromString(flag);
}
