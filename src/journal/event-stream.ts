import { once } from 'node:events';
import type { FastifyReply } from 'fastify';
import type { News } from './news-after.js';

/**
 * A comment now and then: what stands between sees that the line is alive, and a line that is dead is noticed. So long, at
 * most, somebody still hears who may not any more.
 */
const heartbeatMilliseconds = 15_000;
/** How long browsers wait before they come back. */
const retryMilliseconds = 1000;

/** An answer that stays open and tells news as server-sent events. */
export class EventStream {
  private readonly raw: FastifyReply['raw'];
  private readonly heartbeat: NodeJS.Timeout;

  /** @param mayGoOn whether who listens may still hear; asked at each heartbeat */
  constructor(
    reply: FastifyReply,
    private readonly mayGoOn: () => Promise<boolean>,
  ) {
    reply.hijack();
    this.raw = reply.raw;
    this.raw.writeHead(200, {
      'Content-Type': 'text/event-stream',
      'Cache-Control': 'no-store',
      // Says to a proxy that what comes is to be passed on at once.
      'X-Accel-Buffering': 'no',
    });
    this.raw.write(`retry: ${retryMilliseconds}\n\n`);
    this.heartbeat = setInterval(() => void this.beat(), heartbeatMilliseconds).unref();
    this.raw.once('close', () => {
      clearInterval(this.heartbeat);
    });
  }

  /** Writes the news; answers when the line has taken it, so that a slow reader does not fill the memory. */
  async tell(news: readonly News[]): Promise<void> {
    if (this.isOver()) return;
    const text = news.map(({ sequence, ...rest }) => `id: ${sequence}\ndata: ${JSON.stringify(rest)}\n\n`).join('');
    if (this.raw.write(text)) return;
    const ready = new AbortController();
    const patience = setTimeout(() => {
      // Whoever takes nothing for so long is cut off, and comes back by the last id that arrived.
      this.raw.destroy();
    }, heartbeatMilliseconds);
    await Promise.race([
      once(this.raw, 'drain', { signal: ready.signal }),
      once(this.raw, 'close', { signal: ready.signal }),
    ])
      .catch(() => undefined)
      .finally(() => {
        ready.abort();
        clearTimeout(patience);
      });
  }

  whenOver(act: () => void): void {
    if (this.isOver()) act();
    else this.raw.once('close', act);
  }

  end(): void {
    this.raw.end();
  }

  private async beat(): Promise<void> {
    // Where it cannot be told, the line ends without a word: the browser comes back, and is looked at then.
    const goesOn = await this.mayGoOn().catch(() => null);
    if (this.isOver()) return;
    if (goesOn === true) {
      this.raw.write(': here\n\n');
      return;
    }
    if (goesOn === false) this.raw.write('event: over\ndata: {}\n\n');
    this.end();
  }

  private isOver(): boolean {
    return this.raw.destroyed || this.raw.writableEnded || this.raw.closed;
  }
}
