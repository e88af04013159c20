import type { INestApplicationContext } from '@nestjs/common';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { Ids } from '../../platform/ids.js';
import { JobRunner } from '../../platform/jobs/job-runner.js';
import type { DemoClock } from '../demo-clock.js';
import type { Act, TimedAct } from '../life/act.js';
import type { DemoPlan } from '../life/demo-plan.js';
import type { Lived } from '../life/live-through.js';
import { instantOf } from '../life/minutes.js';
import { DemoHand, type Give } from '../set-up/demo-hand.js';
import { setUpDevices } from '../set-up/set-up-devices.js';
import { setUpPeople } from '../set-up/set-up-people.js';
import { setUpPlant } from '../set-up/set-up-plant.js';
import { DemoExercises } from './hold-exercises.js';
import { holdOfMinutes } from './hold-of-minutes.js';
import { LastHour } from './last-hour.js';
import { layOutPaper } from './lay-out-paper.js';
import { accountPlayers } from './play-accounts.js';
import { dispatchPlayers } from './play-dispatch.js';
import { dryingPlayers } from './play-drying.js';
import { hopperPlayers } from './play-hopper.js';
import { laboratoryPlayers } from './play-laboratory.js';
import { makeTracerTrial } from './make-tracer-trial.js';
import { linePlayers } from './play-line.js';
import { palletPlayers } from './play-pallets.js';
import { qualityPlayers } from './play-quality.js';
import type { Player, Players } from './players.js';
import { VehicleAtTheDock } from './vehicle-at-the-dock.js';
import { weighingPlayers } from './play-weighing.js';
import { takeInComplaints } from './take-in-complaints.js';

const allPlayers = (): Players<Act> => ({
  ...dryingPlayers,
  ...laboratoryPlayers,
  ...qualityPlayers,
  ...hopperPlayers,
  ...linePlayers,
  ...weighingPlayers,
  ...palletPlayers,
  ...dispatchPlayers(),
  ...accountPlayers,
});

/** How far the playing is: acts done, of so many. */
export type OnProgress = (done: number, all: number) => void;

/** Plays the days into an empty house: sets the plant and its people up, then calls the command of each act. */
export async function playDays(
  house: INestApplicationContext,
  clock: DemoClock,
  { plan, lived }: { readonly plan: DemoPlan; readonly lived: Lived },
  onProgress: OnProgress = () => undefined,
): Promise<DemoHand> {
  const give: Give = (kind) => house.get(kind as never, { strict: false });
  const siteId = give(Ids).next();
  const plant = await setUpPlant(give, plan, siteId);
  const actors = await setUpPeople(give, siteId);
  const devices = await setUpDevices(give, siteId, [...plant.lines.keys()]);
  const reader = house.get<ReadFrom>(READER, { strict: false });
  const hand = new DemoHand(give, reader, plant, actors, devices);
  const jobs = give(JobRunner);
  const players = allPlayers();
  const endsAt = instantOf(plan.until);
  const lastHour = new LastHour(clock, endsAt, [
    ...new DemoExercises(hand).steps,
    holdOfMinutes(hand),
    ...new VehicleAtTheDock(hand, endsAt).steps,
  ]);
  let jobsAt = '';
  for (const [place, timed] of lived.acts.entries()) {
    await lastHour.goOnUntil(timed.at);
    clock.goTo(timed.at);
    await play(hand, players, timed);
    const halfHour = timed.at.slice(0, 14) + (timed.at.slice(14, 16) < '30' ? '0' : '3');
    if (halfHour !== jobsAt) await jobs.drain();
    jobsAt = halfHour;
    if (place % 50 === 0) onProgress(place, lived.acts.length);
  }
  await lastHour.goOnUntil(endsAt);
  clock.goTo(endsAt);
  await layOutPaper(hand);
  await takeInComplaints(hand);
  await makeTracerTrial(hand, instantOf(plan.from));
  await jobs.drain();
  onProgress(lived.acts.length, lived.acts.length);
  return hand;
}

async function play(hand: DemoHand, players: Players<Act>, { at, by, act }: TimedAct): Promise<void> {
  // Each act goes to the player of its own kind; the compiler cannot follow that through the union.
  const player = players[act.kind] as unknown as Player<Act['kind']>;
  try {
    await player(hand, act, { at, by });
  } catch (error) {
    const why = error instanceof Error ? `${error.message} ${JSON.stringify(error)}` : String(error);
    throw new Error(`The demo cannot go on at ${at}: ${JSON.stringify(act)}: ${why}`, { cause: error });
  }
}
