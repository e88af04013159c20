import type { Asked } from '../../src/journal/entry-draft.js';
import { AddPackWeigher } from '../../src/fill-weight/add-pack-weigher.js';
import { openRun } from '../../src/packing/open-run.js';
import { setUpPeople } from '../../src/demo/set-up/set-up-people.js';
import { AddMachine } from '../../src/people/add-machine.js';
import { AddGrade } from '../../src/plant/add-grade.js';
import { AddPackFormat } from '../../src/plant/add-pack-format.js';
import { AddPackingLine } from '../../src/plant/add-packing-line.js';
import { AddSite } from '../../src/plant/add-site.js';
import { roles } from '../../src/platform/actor.js';
import { readConfig } from '../../src/platform/config.js';
import { UnitOfWork } from '../../src/platform/database/unit-of-work.js';
import { SystemIds } from '../../src/platform/ids.js';
import { buildHouse, openGround } from '../../src/start-house.js';
import type { BenchPlace } from './weights-server.js';

/** A pack weigher of the bench, and the run whose packs it weighs. */
export interface BenchWeigher {
  readonly token: string;
  readonly run: string;
  readonly runId: string;
}

/** Sets up a plant with people and lines in an empty place, a run open on each and a weigher over it. */
export async function weigherPlant(
  { dataFolder, databaseUrl }: BenchPlace,
  lines: readonly string[],
): Promise<readonly BenchWeigher[]> {
  const database = databaseUrl === null ? {} : { DATABASE_URL: databaseUrl };
  const config = readConfig({ DATA_FOLDER: dataFolder, LOG_LEVEL: 'silent', ...database });
  const databases = await openGround(config);
  const house = await buildHouse(config, databases);
  const get = <Kind>(kind: abstract new (...given: never[]) => Kind): Kind =>
    house.get(kind as never, { strict: false });
  const ids = new SystemIds();
  const siteId = ids.next();
  const asked: Asked = {
    actor: { siteId, personId: null, deviceId: null, roles: [...roles] },
    route: 'BENCH',
    key: null,
  };
  try {
    const numbers = { gln: '9520123000011', companyPrefix: '9520123', ssccExtensionDigit: 0 };
    const site = { code: 'AQ', name: 'Alder Quay', timeZone: 'Europe/Berlin', productionDayStart: '06:00' };
    await get(AddSite).execute(asked, { ...site, ...numbers });
    await setUpPeople(get, siteId);
    const grade = await get(AddGrade).execute(asked, { code: 'WS2', name: 'White sugar', tippingRule: 'tip-at-risk' });
    const limits = { assumedLowerMilligrams: 1_990_000, assumedUpperMilligrams: 2_020_000 };
    const pallet = { packTareGrams: 12, packsPerPallet: 480, palletTareGrams: 25_000 };
    const names = { code: 'WS-2KG', name: 'White sugar 2 kg', gtin: '9520123000103', codePattern: 'L{y}{ddd}{line}' };
    const format = { ...names, ...limits, ...pallet, nominalGrams: 2000, gradeIds: [grade.id] };
    const { id: formatId } = await get(AddPackFormat).execute(asked, format);
    const weighers: BenchWeigher[] = [];
    for (const code of lines) {
      const { id: lineId } = await get(AddPackingLine).execute(asked, { code, name: `Line ${code}` });
      const startedAt = new Date(Date.now() - 60_000).toISOString();
      const opened = { id: ids.next(), siteId, lineId, formatId, startedAt, countId: ids.next() };
      const { number } = await get(UnitOfWork).run((tx) => openRun(tx, opened));
      const machine = await get(AddMachine).execute(asked, { code: `weigher-${code}` });
      const marks = { countsPacks: true, rejectsPacks: true, headCount: 14 };
      const scale = { stepMilligrams: 200, maximumPermissibleErrorMilligrams: 500 };
      const weigher = { deviceId: machine.id, lineId, code: `W${code}`, ...scale, ...marks };
      await get(AddPackWeigher).execute(asked, weigher);
      weighers.push({ token: machine.token ?? '', run: number, runId: opened.id });
    }
    return weighers;
  } finally {
    await house.close();
    await databases.close();
  }
}
