import type { Random } from './random.js';

/** What a dryer gives at a moment. */
export interface DryerState {
  readonly kilogramsPerMinute: number;
  readonly moisturePercent: number;
  readonly colourIu: number;
}

/** Where a dryer would stand if nothing drifted. Moisture about 0.02 %: common practice, no source. */
export interface DryerSetting {
  readonly kilogramsPerMinute: number;
  readonly moisturePercent: number;
  readonly colourIu: number;
}

/** A dryer from minute to minute: flow, moisture and colour wander about their setting and come back. */
export class DryingCourse {
  private flow = 0;
  private moisture = 0;
  private colour = 0;

  constructor(private readonly random: Random) {}

  /** One minute on. `upset` is 0 in good running, 1 where something is quite wrong. */
  next(setting: DryerSetting, upset: { readonly moisture: number; readonly colour: number }): DryerState {
    this.flow = wander(this.flow, this.random, 0.004);
    this.moisture = wander(this.moisture, this.random, 0.016);
    this.colour = wander(this.colour, this.random, 0.012);
    return {
      kilogramsPerMinute: setting.kilogramsPerMinute * (1 + this.flow),
      moisturePercent: Math.max(0.005, setting.moisturePercent * (1 + this.moisture) + 0.055 * upset.moisture),
      colourIu: Math.max(5, setting.colourIu * (1 + this.colour) + 26 * upset.colour),
    };
  }
}

/** Steps at random, pulled back to zero within a few hours. */
function wander(from: number, random: Random, step: number): number {
  return from * 0.992 + random.normal(0, step);
}
