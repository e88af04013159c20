import { threeByEightShifts } from '../../src/core/shift-calendar/common-patterns.js';
import type { Asked } from '../../src/journal/entry-draft.js';
import type { Actor, Role } from '../../src/platform/actor.js';
import { shifted } from '../../src/platform/clock.js';
import { SystemIds } from '../../src/platform/ids.js';
import { AddCoder } from '../../src/plant/add-coder.js';
import { AddCustomer } from '../../src/plant/add-customer.js';
import { AddDryer } from '../../src/plant/add-dryer.js';
import { AddGrade } from '../../src/plant/add-grade.js';
import { AddHopper } from '../../src/plant/add-hopper.js';
import { AddPackFormat } from '../../src/plant/add-pack-format.js';
import { AddPackingLine } from '../../src/plant/add-packing-line.js';
import { AddScale } from '../../src/plant/add-scale.js';
import { AddSite } from '../../src/plant/add-site.js';
import { AddStorePlace } from '../../src/plant/add-store-place.js';
import { CheckScale } from '../../src/plant/check-scale.js';
import { LinkHopperToLine } from '../../src/plant/link-hopper-to-line.js';
import { SetCoderClock } from '../../src/plant/set-coder-clock.js';
import { SetShiftPattern } from '../../src/plant/set-shift-pattern.js';
import { SetSpecification } from '../../src/plant/set-specification.js';
import { VerifyScale } from '../../src/plant/verify-scale.js';
import { anActor, type TestHouse } from './house.js';

/** What a test may want otherwise; all else is a plant that works. */
export interface PlantWishes {
  readonly siteCode?: string;
  readonly timeZone?: string;
  readonly capacityGrams?: number;
  readonly packsPerPallet?: number;
  readonly codePattern?: string;
}

/** A small packing house, invented: one dryer, one hopper over two lines, three grades, two formats. */
export interface Plant {
  readonly siteId: string;
  /** May do everything but what only a device does. */
  readonly actor: Actor;
  actorWith(...roles: Role[]): Actor;
  readonly dryerId: string;
  readonly hopperId: string;
  readonly lineIds: readonly [string, string];
  readonly coderIds: readonly [string, string];
  /** Its bags are tipped when released, not before. */
  readonly gradeId: string;
  /** Its bags may be tipped at risk. */
  readonly riskGradeId: string;
  /** Not taken by `formatId`. */
  readonly otherGradeId: string;
  /** 2 kg, GTIN 09520123000103; takes `gradeId` and `riskGradeId`. */
  readonly formatId: string;
  /** 1 kg; takes `otherGradeId` only. */
  readonly otherFormatId: string;
  /** In date and verified for trade. */
  readonly scaleId: string;
  /** Overdue for its check. */
  readonly staleScaleId: string;
  readonly customerId: string;
  readonly placeIds: { readonly store: string; readonly dock: string };
}

const validFrom = '2026-01-01T00:00:00.000Z';
const ids = new SystemIds();

/** Methods that the specifications of the plant name. */
export const moistureMethod = 'GS2/1/3/9-15';
export const colourMethod = 'GS2/3-10';

const allRoles: readonly Role[] = [
  'dryer-operator',
  'line-lead',
  'loader',
  'lab-analyst',
  'quality-officer',
  'dispatch-clerk',
  'plant-manager',
  'administrator',
];

/** Sets up the plant Alder Quay (GS1 demonstration prefix 952) in a house, by its commands. */
export async function aPlant(house: TestHouse, wishes: PlantWishes = {}): Promise<Plant> {
  const siteId = ids.next();
  const actorWith = (...roles: Role[]): Actor => anActor(siteId, ...roles);
  const actor = actorWith(...allRoles);
  const asked: Asked = { actor, route: 'SET UP', key: null };
  await addSite(house, asked, wishes);
  const lines = await addLines(house, asked, wishes);
  const goods = await addGoods(house, asked, wishes);
  const scaleId = await addScale(house, asked, { code: 'S1', everyHours: 720, checkedHoursAgo: 1 });
  const stale = { code: 'S2', everyHours: 24, checkedHoursAgo: 49 };
  const staleScaleId = await addScale(house, asked, stale);
  const places = await addPlaces(house, asked);
  return { siteId, actor, actorWith, ...lines, ...goods, scaleId, staleScaleId, ...places };
}

async function addSite(house: TestHouse, asked: Asked, wishes: PlantWishes): Promise<void> {
  await house.get(AddSite).execute(asked, {
    code: wishes.siteCode ?? 'AQ',
    name: 'Alder Quay',
    timeZone: wishes.timeZone ?? 'Europe/Berlin',
    productionDayStart: '06:00',
    gln: '9520123000011',
    companyPrefix: '9520123',
    ssccExtensionDigit: 0,
  });
  await house.get(SetShiftPattern).execute(asked, { validFrom, shifts: [...threeByEightShifts] });
}

async function addLines(house: TestHouse, asked: Asked, wishes: PlantWishes) {
  const dryer = await house.get(AddDryer).execute(asked, { code: 'D1', name: 'Dryer 1' });
  const capacityGrams = wishes.capacityGrams ?? 4_000_000;
  const hopper = await house.get(AddHopper).execute(asked, { code: 'H1', name: 'Hopper 1', capacityGrams });
  const one = await addLine(house, asked, { code: '1', hopperId: hopper.id });
  const two = await addLine(house, asked, { code: '2', hopperId: hopper.id });
  const lineIds: [string, string] = [one.lineId, two.lineId];
  const coderIds: [string, string] = [one.coderId, two.coderId];
  return { dryerId: dryer.id, hopperId: hopper.id, lineIds, coderIds };
}

async function addLine(house: TestHouse, asked: Asked, line: { code: string; hopperId: string }) {
  const { code, hopperId } = line;
  const { id: lineId } = await house.get(AddPackingLine).execute(asked, { code, name: `Line ${code}` });
  const { id: coderId } = await house.get(AddCoder).execute(asked, { lineId, code: `C${code}` });
  const clock = { coderId, offsetSeconds: 0, uncertaintySeconds: 30, validFrom };
  await house.get(SetCoderClock).execute(asked, clock);
  await house.get(LinkHopperToLine).execute(asked, { lineId, hopperId, validFrom });
  return { lineId, coderId };
}

async function addGoods(house: TestHouse, asked: Asked, wishes: PlantWishes) {
  const gradeId = await addGrade(house, asked, {
    code: 'WS2',
    name: 'White sugar, fine',
    tippingRule: 'released-only',
  });
  const riskGradeId = await addGrade(house, asked, { code: 'WS2R', name: 'White sugar', tippingRule: 'tip-at-risk' });
  const otherGradeId = await addGrade(house, asked, { code: 'BS1', name: 'Brown sugar', tippingRule: 'released-only' });
  const format = {
    packTareGrams: 12,
    packsPerPallet: wishes.packsPerPallet ?? 480,
    palletTareGrams: 25_000,
    codePattern: wishes.codePattern ?? 'L{y}{ddd}{line}{shift} {HH}:{mm}',
  };
  const { id: formatId } = await house.get(AddPackFormat).execute(asked, {
    ...format,
    code: 'WS-2KG',
    name: 'White sugar 2 kg',
    gtin: '9520123000103',
    nominalGrams: 2000,
    assumedLowerMilligrams: 1_990_000,
    assumedUpperMilligrams: 2_020_000,
    gradeIds: [gradeId, riskGradeId],
  });
  const { id: otherFormatId } = await house.get(AddPackFormat).execute(asked, {
    ...format,
    code: 'BS-1KG',
    name: 'Brown sugar 1 kg',
    gtin: '9520123000202',
    nominalGrams: 1000,
    assumedLowerMilligrams: 995_000,
    assumedUpperMilligrams: 1_015_000,
    bestBeforeMonths: 24,
    gradeIds: [otherGradeId],
  });
  return { gradeId, riskGradeId, otherGradeId, formatId, otherFormatId };
}

async function addGrade(
  house: TestHouse,
  asked: Asked,
  grade: { code: string; name: string; tippingRule: string },
): Promise<string> {
  const { id: gradeId } = await house.get(AddGrade).execute(asked, grade);
  const lines = [
    { property: 'moisture-percent', method: moistureMethod, required: true, maximum: '0.06' },
    { property: 'colour-iu', method: colourMethod, required: true, maximum: '45' },
  ];
  await house.get(SetSpecification).execute(asked, { gradeId, validFrom, lines });
  return gradeId;
}

async function addScale(
  house: TestHouse,
  asked: Asked,
  scale: { code: string; everyHours: number; checkedHoursAgo: number },
): Promise<string> {
  const { id: scaleId } = await house.get(AddScale).execute(asked, {
    code: scale.code,
    name: `Bag scale ${scale.code}`,
    intervalMilligrams: 500_000,
    maximumPermissibleErrorMilligrams: 1_000_000,
    checkEveryHours: scale.everyHours,
  });
  const checkedAt = shifted(house.clock.now(), -scale.checkedHoursAgo * 3_600_000);
  const check = { scaleId, deviationMilligrams: 0, checkedAt, reason: 'set up today' };
  await house.get(CheckScale).execute(asked, check);
  const span = { verifiedOn: '2026-01-01', verifiedUntilOn: '2027-12-31' };
  await house.get(VerifyScale).execute(asked, { scaleId, ...span });
  return scaleId;
}

async function addPlaces(house: TestHouse, asked: Asked) {
  const customer = await house.get(AddCustomer).execute(asked, {
    code: 'K-001',
    gln: '9524567000019',
    name: 'Fernhill Foods (invented)',
    address: '1 Example Way, Fernhill',
  });
  const store = await house.get(AddStorePlace).execute(asked, { code: 'LANE-1', kind: 'store' });
  const dock = await house.get(AddStorePlace).execute(asked, { code: 'DOCK-1', kind: 'dock' });
  return { customerId: customer.id, placeIds: { store: store.id, dock: dock.id } };
}
