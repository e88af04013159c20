import { once } from 'node:events';
import { Worker } from 'node:worker_threads';

/**
 * How long requests took that need hardly any work, one every ten milliseconds, while something else went on. They are
 * sent from a thread of their own: what the bench itself is busy with must not count as waiting.
 */
export class FastRequests {
  private readonly worker: Worker;

  constructor(port: number) {
    this.worker = new Worker(new URL('./fast-requests.main.js', import.meta.url), { workerData: port });
  }

  /** Milliseconds. */
  async end(): Promise<readonly number[]> {
    const answered = once(this.worker, 'message');
    this.worker.postMessage('end');
    const [times] = (await answered) as [readonly number[]];
    return times;
  }
}
