import { Agent, request } from 'node:http';
import { setTimeout as pause } from 'node:timers/promises';

const everyMilliseconds = 10;

/** How long requests took that need hardly any work, one every ten milliseconds, while something else went on. */
export class FastRequests {
  private readonly agent = new Agent({ keepAlive: true, maxSockets: 20 });
  private readonly times: number[] = [];
  private isGoingOn = true;
  private readonly sending: Promise<void>;

  constructor(private readonly port: number) {
    this.sending = this.send();
  }

  /** Milliseconds. */
  async end(): Promise<readonly number[]> {
    this.isGoingOn = false;
    await this.sending;
    this.agent.destroy();
    return this.times;
  }

  private async send(): Promise<void> {
    const open: Promise<void>[] = [];
    while (this.isGoingOn) {
      open.push(this.one());
      await pause(everyMilliseconds);
    }
    await Promise.all(open);
  }

  private one(): Promise<void> {
    const begun = performance.now();
    return new Promise((resolve, reject) => {
      const sent = request({ port: this.port, path: '/healthz', agent: this.agent }, (answer) => {
        answer.resume();
        answer.on('end', () => {
          this.times.push(performance.now() - begun);
          resolve();
        });
      });
      sent.on('error', reject);
      sent.end();
    });
  }
}
