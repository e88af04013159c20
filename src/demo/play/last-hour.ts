import { shifted, type Instant } from '../../platform/clock.js';
import type { DemoClock } from '../demo-clock.js';

/** Something that is done so long before the demo ends. */
export interface LastStep {
  readonly minutesBefore: number;
  readonly act: () => Promise<void>;
}

/** What is done in the last hour of the demo beside the days that are lived through, each at its own time. */
export class LastHour {
  private readonly steps: LastStep[];

  constructor(
    private readonly clock: DemoClock,
    private readonly endsAt: Instant,
    steps: readonly LastStep[],
  ) {
    this.steps = steps.toSorted((one, other) => other.minutesBefore - one.minutesBefore);
  }

  /** Does what is due before an instant. */
  async goOnUntil(at: Instant): Promise<void> {
    for (let next = this.steps[0]; next !== undefined; next = this.steps[0]) {
      const due = shifted(this.endsAt, -next.minutesBefore * 60_000);
      if (due > at) return;
      this.steps.shift();
      this.clock.goTo(due);
      await next.act();
    }
  }
}
