import { minuteOfLocal } from './minutes.js';
import type { World } from './world.js';

/** Every production day begins with known weights on the scales in use. */
export function noteScaleChecks(world: World): void {
  for (const { productionOn, code } of world.plan.shifts) {
    if (code === 'M') world.diary.note(minuteOfLocal(productionOn, '06:02'), 'lead-M', { kind: 'check-scales' });
  }
}
