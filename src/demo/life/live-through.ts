import type { TimedAct } from './act.js';
import type { DemoPlan } from './demo-plan.js';
import { DispatchOffice } from './dispatch-office.js';
import { DryerCrew } from './dryer-crew.js';
import { HopperCrew } from './hopper-crew.js';
import { Laboratory } from './laboratory.js';
import { instantOf } from './minutes.js';
import { noteScaleChecks } from './scale-checks.js';
import { noteOpeningStock } from './opening-stock.js';
import { QualityOffice } from './quality-office.js';
import { noteRecall } from './late-hold.js';
import type { TruthLedger } from './truth-ledger.js';
import { World } from './world.js';

/** What was recorded, and what truly happened. */
export interface Lived {
  readonly acts: readonly TimedAct[];
  readonly truth: TruthLedger;
}

/** Lives through the days of the demo, minute by minute. The same plan gives the same days, to the gram. */
export function liveThrough(plan: DemoPlan): Lived {
  const world = new World(plan);
  const laboratory = new Laboratory(world);
  const dryers = plan.dryers.map((dryer) => new DryerCrew(world, dryer, laboratory));
  const hoppers = plan.hoppers.map((hopper) => new HopperCrew(world, hopper));
  const quality = new QualityOffice(world);
  noteOpeningStock(world);
  noteScaleChecks(world);
  const dispatch = new DispatchOffice(world);
  for (let minute = plan.from; minute < plan.until; minute += 1) {
    for (const dryer of dryers) dryer.step(minute);
    quality.step(minute);
    dispatch.step(minute);
    for (const hopper of hoppers) hopper.step(minute);
  }
  noteRecall(world);
  for (const hopper of hoppers) hopper.remember(plan.until);
  const end = instantOf(plan.until);
  return { acts: world.diary.acts().filter(({ at }) => at < end), truth: world.ledger };
}
