import { setFlagsFromString } from 'node:v8';
import { Worker } from 'node:worker_threads';
import { languageNow } from '../sentences/language.js';
import { AnsweringThread } from '../threads/answering-thread.js';
import { builtUrl } from '../threads/built-url.js';
import type { HeavyWork } from './heavy-ground.js';
import { errorOf, type HeavyAnswer, type HeavyMessage, type WholeQuestion } from './heavy-question.js';

/** One thread with a bare connection that can only query; what is given to it waits for its turn. */
export class HeavyThread {
  /** How many are waiting or under way. */
  queued = 0;
  private turn: Promise<unknown> = Promise.resolve();
  private readonly thread: AnsweringThread<HeavyMessage, HeavyAnswer>;

  constructor(work: HeavyWork) {
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
    const answer = await this.ask((number) => ({ number, ...whole, language: languageNow() }));
    return 'text' in answer ? answer.text : '';
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
 * question that is collected in its middle lives in many. What nobody waits for makes do with a smaller young half:
 * docs/decisions/0043-what-a-heavy-thread-loads.md.
 */
const promptLimits = { maxOldGenerationSizeMb: 512, maxYoungGenerationSizeMb: 48 };
const patientLimits = { maxOldGenerationSizeMb: 512, maxYoungGenerationSizeMb: 24 };

/** What `npm start` says of the main thread's heap stands above the limits of any thread that begins later: withdrawn. */
function withdrawHeapFlags(): void {
  for (const flag of ['--max-old-space-size=0', '--max-semi-space-size=0']) setFlagsFromString(flag);
}
