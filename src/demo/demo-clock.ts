import { v7 } from 'uuid';
import { Clock, type Instant } from '../platform/clock.js';
import { Ids } from '../platform/ids.js';
import { seededRandom, type Random } from './plant-physics/random.js';

/** The clock of the days that are lived through: it stands until the next act, and never goes back. */
export class DemoClock extends Clock {
  constructor(private at: Instant) {
    super();
  }

  now(): Instant {
    return this.at;
  }

  goTo(at: Instant): void {
    if (at > this.at) this.at = at;
  }
}

/**
 * Goes on from where the records end, at the pace of the machine's clock: whenever the demo is looked at, its plant is in
 * the middle of a shift and its scales are in date.
 */
class OnwardClock extends Clock {
  private readonly startedAt = Date.now();

  constructor(private readonly from: Instant) {
    super();
  }

  now(): Instant {
    return new Date(Date.parse(this.from) + Date.now() - this.startedAt).toISOString();
  }
}

/** The clock that the demo's plant is looked at by, after the last of its records. */
export function clockAfter(last: Instant): Clock {
  return new OnwardClock(last);
}

/** Ids that follow the demo's clock and its seed, each later than the one before. */
export class DemoIds extends Ids {
  private readonly random: Random;
  private last = { msecs: 0, seq: 0 };

  constructor(
    private readonly clock: Clock,
    seed: number,
  ) {
    super();
    this.random = seededRandom(seed, 'ids');
  }

  next(): string {
    const msecs = Date.parse(this.clock.now());
    const seq = msecs === this.last.msecs ? this.last.seq + 1 : 0;
    this.last = { msecs, seq };
    const random = Uint8Array.from({ length: 16 }, () => this.random.whole(0, 255));
    return v7({ msecs, seq, random });
  }
}
