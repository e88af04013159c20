import { setTimeout as pause } from 'node:timers/promises';
import { question } from '../../src/desks/thread-of-code.question.js';
import { toWhole } from '../../src/platform/database/stored-values.js';
import type { ReadFrom } from '../../src/platform/database/reading.js';
import { groupBy } from '../../src/platform/group-by.js';
import { quantile } from '../floor.js';
import { Asker } from './asker.js';
import { underLoad } from './load.js';
import { openBare, type BareDatabase, type BareStatement } from './recorded-view.js';
import { periodKinds, sampleQuestions, spread, type PackQuestion } from './sample-questions.js';
import { FloorProcess, HouseProcess, type Settings } from './servers.js';
import { changing, signInRoles, type Headers } from './sign-in.js';

/** How long one kind of question takes over HTTP, in milliseconds; beside the floor where it has one. */
export interface QuestionFigure {
  readonly name: string;
  readonly count: number;
  readonly p50: number;
  readonly p99: number;
  readonly floorP50: number | null;
  /** p50 by p50. */
  readonly ratio: number | null;
  /** Mean processor time of a question in the whole server, in milliseconds; while others work, theirs is in it. */
  readonly cpu: number | null;
  readonly floorCpu: number | null;
  readonly kilobytes: number;
}

/** A plant measured alone, and while others work. */
export interface PlantFigures {
  readonly bagCount: number;
  readonly palletCount: number;
  readonly deliveryCount: number;
  readonly countCount: number;
  readonly alone: readonly QuestionFigure[];
  readonly loaded: readonly QuestionFigure[];
  readonly tipsPerSecond: number;
  readonly tipP99: number;
  readonly reportCount: number;
  readonly reportMedian: number;
  readonly mostMegabytes: number;
}

const warmUpCount = 25;
/** So that two runs on one machine do not meet. */
const port = 18_000 + (process.pid % 2000);

interface Asked {
  readonly url: string;
  readonly floorUrl: string | null;
}

/** Asks the house in a process of its own, alone and under load, each question beside its floor. */
export async function measurePlant(settings: Settings, count: number): Promise<PlantFigures> {
  const bare = openBare(settings);
  const from = bare.recorded([]);
  const questions = await sampleQuestions(from, count);
  const house = await HouseProcess.start(settings, port);
  const floor = await FloorProcess.start(settings);
  const asker = Asker.start();
  try {
    const [officer = {}, lead = {}] = await signInRoles(house.address, 'quality-officer', 'line-lead');
    const processes = { house, floor, asker, headers: officer };
    const asked = new Map<string, readonly Asked[]>();
    for (const kind of periodKinds) {
      asked.set(`pack, period of ${kind}`, await packsAsked(questions.get(kind) ?? [], { bare, house, floor }));
    }
    asked.set('where a dryer shift went', await dryerShiftsAsked(from, house.address, count));
    const recalls = await openDayRecalls(from, house.address, officer);
    asked.set('recall of a day', recalls);
    const measure = async (): Promise<QuestionFigure[]> => {
      const figures: QuestionFigure[] = [];
      for (const [name, own] of asked) figures.push(await figureOf(name, own, processes));
      return figures;
    };
    for (const own of asked.values()) await figureOf('', own.slice(0, warmUpCount), processes);
    const alone = await measure();
    const others = { from, address: house.address, headers: lead };
    const report = { url: recalls[0]?.url ?? '', headers: officer };
    const { answer: loaded, ...load } = await underLoad(others, report, measure);
    return { ...(await countsOf(from)), alone, loaded, ...load, mostMegabytes: house.mostMegabytes() };
  } finally {
    await asker.stop();
    await floor.stop();
    await house.stop();
    await bare.close();
  }
}

async function packsAsked(
  packs: readonly PackQuestion[],
  { bare, house, floor }: { readonly bare: BareDatabase; readonly house: HouseProcess; readonly floor: FloorProcess },
): Promise<Asked[]> {
  const asked: Asked[] = [];
  for (const { code, localTime } of packs) {
    const statements: BareStatement[] = [];
    const view = bare.recorded(statements);
    const [site] = await bare.recorded([]).sql<{ id: string }>`SELECT "id" FROM "site"`;
    const wish = { siteId: site?.id ?? '', code, localTime, meant: null, now: new Date().toISOString() };
    const answer = await question.answer(view, wish);
    if (!answer.startsWith('{"thread"')) throw new Error(`${code} ${localTime} is no thread: ${answer.slice(0, 200)}`);
    const floorUrl = await floor.addressOf({ statements, answer: JSON.parse(answer) as unknown });
    const query = new URLSearchParams({ code, at: localTime });
    asked.push({ url: `${house.address}/api/thread?${query.toString()}`, floorUrl });
  }
  return asked;
}

/** The reach of a hold on a dryer run: each is of one shift here. */
async function dryerShiftsAsked(from: ReadFrom, address: string, count: number): Promise<Asked[]> {
  const runs = await from.sql<{ id: string }>`
    SELECT r."id" FROM "dryer_run" r WHERE EXISTS (
      SELECT 1 FROM "bulk_bag" b JOIN "tip" t ON t."bag_id" = b."id" WHERE b."dryer_run_id" = r."id") ORDER BY r."id"`;
  return spread(runs, count).map(({ id }) => ({
    url: `${address}/api/holds/reach?kind=dryer-run&id=${id}`,
    floorUrl: null,
  }));
}

/** Exercises over all lots of a production day, opened beforehand. */
async function openDayRecalls(from: ReadFrom, address: string, headers: Headers): Promise<Asked[]> {
  const runs = await from.sql<{ lotId: string; day: string }>`
    SELECT c."lot_id" AS "lotId", SUBSTR(r."started_at", 1, 10) AS "day"
    FROM "packing_run" r JOIN "coder_change" c ON c."run_id" = r."id" ORDER BY r."id"`;
  const days = groupBy(runs, ({ day }) => day);
  const asked: Asked[] = [];
  // What was read above held everything up: a connection that was closed meanwhile is noticed now, not in the middle.
  await pause(200);
  for (const own of spread([...days.values()], 10)) {
    const scopes = own.map(({ lotId }) => ({ scopeKind: 'lot', scopeId: lotId }));
    const answer = await fetch(`${address}/api/recalls`, {
      method: 'POST',
      headers: changing(headers),
      body: JSON.stringify({ kind: 'exercise', hazard: 'safety', reason: 'Measured', scopes }),
    });
    if (!answer.ok) throw new Error(`no recall was opened: ${await answer.text()}`);
    const { id } = (await answer.json()) as { id: string };
    asked.push({ url: `${address}/api/recalls/${id}`, floorUrl: null });
  }
  return asked;
}

interface Processes {
  readonly house: HouseProcess;
  readonly floor: FloorProcess;
  readonly asker: Asker;
  readonly headers: Headers;
}

async function figureOf(
  name: string,
  asked: readonly Asked[],
  { house, floor, asker, headers }: Processes,
): Promise<QuestionFigure> {
  const times: number[] = [];
  const floors: number[] = [];
  let bytes = 0;
  const [houseBegan, floorBegan] = [house.cpuMilliseconds(), floor.cpuMilliseconds()];
  for (const { url, floorUrl } of asked) {
    const own = await asker.ask(url, { ...headers, ...plainly });
    times.push(own.milliseconds);
    bytes += own.byteCount;
    if (floorUrl !== null) floors.push((await asker.ask(floorUrl, plainly)).milliseconds);
  }
  const [p50, floorP50] = [quantile(times, 0.5), floors.length === 0 ? null : quantile(floors, 0.5)];
  return {
    ...{ name, count: times.length, p50, p99: quantile(times, 0.99), floorP50 },
    ...{ ratio: floorP50 === null ? null : p50 / floorP50, kilobytes: bytes / times.length / 1000 },
    cpu: perQuestion(houseBegan, house.cpuMilliseconds(), times.length),
    floorCpu: perQuestion(floorBegan, floor.cpuMilliseconds(), floors.length),
  };
}

function perQuestion(began: number | null, ended: number | null, count: number): number | null {
  return began === null || ended === null || count === 0 ? null : (ended - began) / count;
}

/** Not packed, so that both sides send the same. */
const plainly = { accept: 'application/json', 'accept-encoding': 'identity' };

async function countsOf(
  from: ReadFrom,
): Promise<Pick<PlantFigures, 'bagCount' | 'palletCount' | 'deliveryCount' | 'countCount'>> {
  const [row] = await from.sql<Record<'bags' | 'pallets' | 'deliveries' | 'counts', number | string>>`
    SELECT (SELECT COUNT(*) FROM "bulk_bag") AS "bags", (SELECT COUNT(*) FROM "pallet") AS "pallets",
      (SELECT COUNT(*) FROM "delivery") AS "deliveries", (SELECT COUNT(*) FROM "pack_count") AS "counts"`;
  return {
    ...{ bagCount: toWhole(row?.bags ?? 0), palletCount: toWhole(row?.pallets ?? 0) },
    ...{ deliveryCount: toWhole(row?.deliveries ?? 0), countCount: toWhole(row?.counts ?? 0) },
  };
}
