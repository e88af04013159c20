import { DemoClock, DemoIds } from '../../src/demo/demo-clock.js';
import { addDays } from '../../src/core/shift-calendar/calendar-day.js';
import { instantOf, shiftsFrom } from '../../src/demo/life/minutes.js';
import { seededRandom } from '../../src/demo/plant-physics/random.js';
import type { Give } from '../../src/demo/set-up/demo-hand.js';
import { readConfig, type Config } from '../../src/platform/config.js';
import { NumberSeries } from '../../src/platform/database/number-series.entity.js';
import { buildHouse, openGround } from '../../src/start-house.js';
import { setUpBenchPlant } from './bench-plant.js';
import { DryerHistory } from './dryer-history.js';
import type { BenchPlant, History } from './history.js';
import { FilmHistory } from './film-history.js';
import { HopperHistory } from './hopper-history.js';
import { Numbers } from './numbers.js';
import { PalletHistory } from './pallet-history.js';
import { postgresSink, sqliteSink } from './row-sink.js';

/** The day after the last whole one. */
const endOn = '2026-10-26';
const bagsADay = 400;
const packsPerMinute = 72;

/** A plant with its history written. */
export interface WrittenPlant {
  readonly plant: BenchPlant;
  readonly endsAt: string;
}

/**
 * Sets a plant up in an empty database and writes so many days of history into it in bulk: past the one door, without
 * triggers and without a journal (its chain holds the setting up alone). Each day's facts are those that the commands
 * would have written; nothing is corrected, held or sold whole.
 */
export async function writeHistory(
  settings: { readonly dataFolder: string; readonly databaseUrl: string | null },
  days: number,
  onDay: (done: number) => void = () => undefined,
): Promise<WrittenPlant> {
  const config = readConfig({
    DATA_FOLDER: settings.dataFolder,
    LOG_LEVEL: 'error',
    ...(settings.databaseUrl === null ? {} : { DATABASE_URL: settings.databaseUrl }),
  });
  const startOn = addDays(endOn, -days);
  const plant = await setUp(config, `${addDays(startOn, -1)}T06:00:00.000Z`);
  const databases = await openGround(config);
  // What the tables are called is known from here on; two connections must not share the file while it is filled.
  await databases.close();
  const sink =
    databases.file === null
      ? await postgresSink(config.databaseUrl ?? '', databases.writer)
      : sqliteSink(databases.file, databases.writer);
  const numbers = new Numbers();
  const films = new FilmHistory(sink, numbers, plant.siteId);
  const history: History = { sink, plant, numbers, films, random: seededRandom(1, 'history') };
  const endsAt = await live(history, { startOn, days }, onDay);
  await sink.finish();
  return { plant, endsAt };
}

async function setUp(config: Config, at: string): Promise<BenchPlant> {
  const databases = await openGround(config);
  const clock = new DemoClock(at);
  const house = await buildHouse(config, databases, { clock, ids: new DemoIds(clock, 1) });
  const give: Give = (kind) => house.get(kind as never, { strict: false });
  const plant = await setUpBenchPlant(give);
  await house.close();
  await databases.close();
  return plant;
}

async function live(
  history: History,
  { startOn, days }: { readonly startOn: string; readonly days: number },
  onDay: (done: number) => void,
): Promise<string> {
  const dryers = new DryerHistory(history, { bagsADay, storeBagCount: 2 * bagsADay });
  const pallets = new PalletHistory(history);
  const hoppers = history.plant.hoppers.map((hopper) => new HopperHistory(history, hopper, dryers.store, pallets));
  const shifts = shiftsFrom(startOn, days);
  let until = 0;
  for (const [place, shift] of shifts.entries()) {
    dryers.shift(shift);
    // The first two days fill the store.
    if (place >= 6) for (const hopper of hoppers) hopper.shift(shift, packsPerMinute);
    pallets.dispatch(shift.from + 30);
    until = shift.until;
    if (place % 3 === 2) {
      await history.sink.endChunk();
      onDay((place + 1) / 3);
    }
  }
  dryers.end();
  pallets.end();
  for (const hopper of hoppers) hopper.end(until);
  for (const [name, nextNumber] of history.numbers.series()) {
    history.sink.put(NumberSeries, { siteId: history.plant.siteId, name, nextNumber });
  }
  await history.sink.endChunk();
  return instantOf(until);
}
