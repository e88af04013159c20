import { Inject, Injectable, Logger, type BeforeApplicationShutdown } from '@nestjs/common';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { lastSequence, newsAfter, type News } from './news-after.js';

/** Who listens: what is taken from which sequence on. `take` answers when the listener is ready for more. */
export interface Listener {
  readonly siteId: string;
  /** The last sequence that the listener knows. */
  readonly since: number;
  take(news: readonly News[]): Promise<void>;
}

interface Listening {
  readonly listener: Listener;
  told: number;
  isBusy: boolean;
}

/** How often the journal is looked at while somebody listens: entries of other processes come to light so. */
const lookEveryMilliseconds = 250;
const pageLength = 100;

/**
 * Tells listeners what the journal of their site takes in, in its own order and without a gap: sequences rise by one
 * with each commit, so whatever stands after the last one told is new. One look serves all listeners of a site.
 */
@Injectable()
export class JournalNews implements BeforeApplicationShutdown {
  private readonly log = new Logger(JournalNews.name);
  private readonly sites = new Map<string, Set<Listening>>();
  private timer: NodeJS.Timeout | null = null;
  private looking: Promise<void> | null = null;
  private isWokenAgain = false;

  constructor(@Inject(READER) private readonly reader: ReadFrom) {}

  /**
   * Where somebody begins to hear who knows the journal up to a sequence, or (null) wants what comes from now on. It is
   * asked before they are told that they are heard: what is recorded after that must not count as known.
   */
  async beginningFor(siteId: string, known: number | null): Promise<number> {
    const last = await lastSequence(this.reader, siteId);
    // A sequence from before a restored backup lies ahead of the journal: there is nothing to miss.
    return Math.min(known ?? last, last);
  }

  /** Begins to listen; answers what ends it. What was missed since `since` is told first. */
  listen(listener: Listener): () => void {
    const { siteId } = listener;
    const listening = { listener, told: listener.since, isBusy: false };
    const others = this.sites.get(siteId) ?? new Set();
    this.sites.set(siteId, others.add(listening));
    this.timer ??= setInterval(() => {
      this.wake();
    }, lookEveryMilliseconds).unref();
    this.wake();
    return () => {
      this.leave(siteId, listening);
    };
  }

  /** Something was committed here: look at once. Costs nothing while nobody listens. */
  wake(): void {
    if (this.timer === null) return;
    if (this.looking !== null) {
      this.isWokenAgain = true;
      return;
    }
    this.looking = this.look()
      .catch((error: unknown) => {
        this.log.error(error);
      })
      .finally(() => {
        this.looking = null;
        if (!this.isWokenAgain) return;
        this.isWokenAgain = false;
        this.wake();
      });
  }

  async beforeApplicationShutdown(): Promise<void> {
    this.sites.clear();
    this.stopTimer();
    await this.looking;
  }

  private async look(): Promise<void> {
    for (const [siteId, listeners] of this.sites) {
      while (await this.lookAt(siteId, listeners));
    }
  }

  /** Tells one page of news, from where the one furthest behind is. Answers whether there may be more. */
  private async lookAt(siteId: string, listeners: ReadonlySet<Listening>): Promise<boolean> {
    const ready = [...listeners].filter(({ isBusy }) => !isBusy);
    if (ready.length === 0) return false;
    const from = Math.min(...ready.map(({ told }) => told));
    const news = await newsAfter(this.reader, siteId, { sequence: from, limit: pageLength });
    for (const listening of ready) void this.tell(listening, news);
    return news.length === pageLength;
  }

  /** Whoever is slow to take news keeps nobody else waiting: it is left out until it is ready, and then told on. */
  private async tell(listening: Listening, news: readonly News[]): Promise<void> {
    const unheard = news.filter(({ sequence }) => sequence > listening.told);
    const last = unheard.at(-1);
    if (last === undefined) return;
    listening.told = last.sequence;
    listening.isBusy = true;
    await listening.listener.take(unheard);
    listening.isBusy = false;
    this.wake();
  }

  private leave(siteId: string, listening: Listening): void {
    const listeners = this.sites.get(siteId);
    listeners?.delete(listening);
    if (listeners?.size === 0) this.sites.delete(siteId);
    if (this.sites.size === 0) this.stopTimer();
  }

  private stopTimer(): void {
    if (this.timer !== null) clearInterval(this.timer);
    this.timer = null;
  }
}
