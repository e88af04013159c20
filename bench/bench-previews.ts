import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { clockAfter } from '../src/demo/demo-clock.js';
import type { DemoTruth } from '../src/demo/truth.js';
import { TipBag } from '../src/hopper/tip-bag.js';
import type { Asked } from '../src/journal/entry-draft.js';
import { RecordChange } from '../src/journal/record-change.js';
import { roles } from '../src/platform/actor.js';
import { shifted } from '../src/platform/clock.js';
import { readConfig } from '../src/platform/config.js';
import { HeavyReads } from '../src/platform/database/heavy-reads.js';
import { READER, type ReadFrom } from '../src/platform/database/reading.js';
import { UnitOfWork, type Tx } from '../src/platform/database/unit-of-work.js';
import { buildHouse, openGround } from '../src/start-house.js';
import { CorrectionRipple } from '../src/tracing/correction-ripple.js';
import { bagsToTip } from './bags-to-tip.js';
import { recording } from './bench-threads.js';
import { quantile, replay } from './floor.js';
import { recordStatements, type Statement } from './statement-log.js';

/** Previews of late tips beside the bare driver's, and what they cost others. */
export interface PreviewFigure {
  readonly name: string;
  readonly count: number;
  readonly medianMilliseconds: number;
  readonly floorMedianMilliseconds: number;
  /** Processor time of all threads of the server, and of the bare driver; a shared machine stretches it less. */
  readonly cpuMedianMilliseconds: number;
  readonly floorCpuMedianMilliseconds: number;
  /** Of the processor times. */
  readonly ratio: number;
  /** How long one unit of a preview keeps the writers' queue: the longest of a preview, of which the median and the most. */
  readonly heldMedianMilliseconds: number;
  readonly heldMostMilliseconds: number;
  readonly heldCpuMedianMilliseconds: number;
  /** How long another writer waits for its turn and is done, with and without a preview beside it. */
  readonly waitMedianMilliseconds: number;
  readonly waitMostMilliseconds: number;
  readonly aloneMedianMilliseconds: number;
  readonly pallets: number;
}

/** A tip of so long ago: of the shift before. Our own choice, no source. */
const lateHours = 10;

/** Late tips, looked at on a copy of the demo's plant and never recorded. */
export async function benchPreviews(plantFolder: string, truth: DemoTruth, count: number): Promise<PreviewFigure> {
  const folder = mkdtempSync(join(tmpdir(), 'packthread-bench-'));
  cpSync(plantFolder, folder, { recursive: true });
  const databases = await openGround(readConfig({ DATA_FOLDER: folder, LOG_LEVEL: 'silent' }));
  const house = await buildHouse(readConfig({ DATA_FOLDER: folder, LOG_LEVEL: 'silent' }), databases, {
    clock: clockAfter(truth.endsAt),
  });
  const get = <Kind>(kind: abstract new (...given: never[]) => Kind): Kind =>
    house.get(kind as never, { strict: false });
  let keys = 0;
  const asked = (): Asked => {
    keys += 1;
    const actor = { siteId: truth.siteId, personId: null, deviceId: 'bench', roles: [...roles] };
    return { actor, route: 'bench', key: `bench-preview-${keys}` };
  };
  try {
    const from = house.get<ReadFrom>(READER, { strict: false });
    const { bags, hopperId } = await bagsToTip({ get, from, asked }, count);
    const units = get(UnitOfWork);
    const reads: Statement[] = [];
    const ripple = new CorrectionRipple(get(RecordChange), recordedReads(get(HeavyReads), reads));
    const held = heldTimes(units);
    const alone = await waitsOf(units, () => setTimeout(400));
    const copy = join(folder, 'floor.sqlite');
    await databases.writer.query('PRAGMA wal_checkpoint(TRUNCATE)');
    cpSync(join(folder, 'packthread.sqlite'), copy);
    const took = { times: [0], cpus: [0], floors: [0], floorCpus: [0], held: [0], heldCpus: [0] };
    for (const list of Object.values(took)) list.length = 0;
    const waits: number[] = [];
    let pallets = 0;
    const openedAt = shifted(truth.endsAt, -lateHours * 3_600_000);
    const preview = (bag: string) =>
      ripple.of(asked(), (trying) =>
        get(TipBag).execute(trying, { bag, hopperId, openedAt, isOff: true, happened: true, reason: 'bench' }),
      );
    for (const bag of bags) {
      reads.length = 0;
      const log = recordStatements(databases.writer);
      held.length = 0;
      const [found, own] = await measured(() => preview(bag));
      log.stop();
      const [floor, bare] = await measured(() => replay(copy, [...log.statements, ...reads]));
      took.times.push(own.milliseconds);
      took.cpus.push(own.cpuMilliseconds);
      took.floors.push(floor);
      took.floorCpus.push(bare.cpuMilliseconds);
      took.held.push(Math.max(...held.map(({ milliseconds }) => milliseconds)));
      took.heldCpus.push(Math.max(...held.map(({ cpuMilliseconds }) => cpuMilliseconds)));
      pallets = found.pallets.length;
    }
    for (const bag of bags) waits.push(...(await waitsOf(units, () => preview(bag))));
    const median = (list: readonly number[]): number => quantile(list, 0.5);
    return {
      ...{ name: 'late tip, looked at', count: took.times.length, pallets },
      ...{ medianMilliseconds: median(took.times), floorMedianMilliseconds: median(took.floors) },
      ...{ cpuMedianMilliseconds: median(took.cpus), floorCpuMedianMilliseconds: median(took.floorCpus) },
      ratio: median(took.cpus) / median(took.floorCpus),
      ...{ heldMedianMilliseconds: median(took.held), heldMostMilliseconds: Math.max(...took.held) },
      heldCpuMedianMilliseconds: median(took.heldCpus),
      ...{ waitMedianMilliseconds: median(waits), waitMostMilliseconds: Math.max(...waits) },
      aloneMedianMilliseconds: median(alone),
    };
  } finally {
    await house.close();
    await databases.close();
    rmSync(folder, { recursive: true });
  }
}

/** The same reads, each statement written down. */
function recordedReads(heavy: HeavyReads, statements: Statement[]): HeavyReads {
  const snapshot = <Answer>(work: (from: ReadFrom) => Promise<Answer>): Promise<Answer> =>
    heavy.snapshot((from) => work(recording(from, statements)));
  return Object.assign(Object.create(heavy) as HeavyReads, { snapshot });
}

interface Took {
  readonly milliseconds: number;
  readonly cpuMilliseconds: number;
}

async function measured<Answer>(work: () => Answer | Promise<Answer>): Promise<readonly [Answer, Took]> {
  const [begun, cpu] = [performance.now(), process.cpuUsage()];
  const answer = await work();
  const { user, system } = process.cpuUsage(cpu);
  return [answer, { milliseconds: performance.now() - begun, cpuMilliseconds: (user + system) / 1000 }];
}

/** What each unit of a preview holds its turn for, from its first statement to the last. */
function heldTimes(units: UnitOfWork): Took[] {
  const times: Took[] = [];
  const rehearse = units.rehearse.bind(units);
  units.rehearse = <Answer>(work: (tx: Tx) => Promise<Answer>): Promise<Answer> =>
    rehearse(async (tx) => {
      const [answer, took] = await measured(() => work(tx));
      times.push(took);
      return answer;
    });
  return times;
}

/** How long another writer waits, again and again, while something goes on. */
async function waitsOf(units: UnitOfWork, goOn: () => Promise<unknown>): Promise<number[]> {
  const waits: number[] = [];
  const other = { goesOn: true };
  const done = goOn().finally(() => {
    other.goesOn = false;
  });
  while (other.goesOn) {
    const begun = performance.now();
    await units.run((tx) => tx.sql`SELECT "sequence" FROM "journal_head"`);
    waits.push(performance.now() - begun);
    await setTimeout(5);
  }
  await done;
  return waits;
}
