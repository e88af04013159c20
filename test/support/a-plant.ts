import { canonicalText, type Canonical } from '../../src/platform/canonical-text.js';
import { threeByEightShifts } from '../../src/core/shift-calendar/common-patterns.js';
import type { Actor, Role } from '../../src/platform/actor.js';
import { UnitOfWork, type Tx } from '../../src/platform/database/unit-of-work.js';
import { SystemIds } from '../../src/platform/ids.js';
import { Coder } from '../../src/plant/coder.entity.js';
import { CoderClock } from '../../src/plant/coder-clock.entity.js';
import { Customer } from '../../src/plant/customer.entity.js';
import { CustomerContact } from '../../src/plant/customer-contact.entity.js';
import { Dryer } from '../../src/plant/dryer.entity.js';
import { Grade } from '../../src/plant/grade.entity.js';
import { GradeSpecification } from '../../src/plant/grade-specification.entity.js';
import { Hopper } from '../../src/plant/hopper.entity.js';
import { HopperLine } from '../../src/plant/hopper-line.entity.js';
import { PackFormat } from '../../src/plant/pack-format.entity.js';
import { PackFormatGrade } from '../../src/plant/pack-format-grade.entity.js';
import { PackingLine } from '../../src/plant/packing-line.entity.js';
import { Scale } from '../../src/plant/scale.entity.js';
import { ScaleCheck } from '../../src/plant/scale-check.entity.js';
import { ScaleVerification } from '../../src/plant/scale-verification.entity.js';
import { ShiftPatternVersion } from '../../src/plant/shift-pattern.entity.js';
import { Site } from '../../src/plant/site.entity.js';
import { StorePlace } from '../../src/plant/store-place.entity.js';
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

/** Sets up the plant Alder Quay (GS1 demonstration prefix 952) in a house. */
export async function aPlant(house: TestHouse, wishes: PlantWishes = {}): Promise<Plant> {
  return house.get(UnitOfWork).run(async (tx) => {
    const siteId = await addSite(tx, wishes);
    const lines = await addLines(tx, siteId, wishes);
    const goods = await addGoods(tx, siteId, wishes);
    const scales = await addScales(tx, siteId);
    const places = await addPlaces(tx, siteId);
    const actorWith = (...roles: Role[]): Actor => anActor(siteId, ...roles);
    return { siteId, actor: actorWith(...allRoles), actorWith, ...lines, ...goods, ...scales, ...places };
  });
}

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

async function addSite(tx: Tx, wishes: PlantWishes) {
  const siteId = ids.next();
  await tx.insert(Site, {
    id: siteId,
    code: wishes.siteCode ?? 'AQ',
    name: 'Alder Quay',
    timeZone: wishes.timeZone ?? 'Europe/Berlin',
    productionDayStart: '06:00',
    gln: '9520123000011',
    companyPrefix: '9520123',
    ssccExtensionDigit: 0,
  });
  const pattern = { productionDayStart: '06:00', shifts: threeByEightShifts, rota: null } as unknown as Canonical;
  await tx.insert(ShiftPatternVersion, { id: ids.next(), siteId, validFrom, pattern: canonicalText(pattern) });
  return siteId;
}

async function addLines(tx: Tx, siteId: string, wishes: PlantWishes) {
  const [dryerId, hopperId] = [ids.next(), ids.next()];
  await tx.insert(Dryer, { id: dryerId, siteId, code: 'D1', name: 'Dryer 1' });
  await tx.insert(Hopper, {
    id: hopperId,
    siteId,
    code: 'H1',
    name: 'Hopper 1',
    capacityGrams: wishes.capacityGrams ?? 4_000_000,
    flowModel: 'first-in-first-out',
    likelyPermille: 1,
  });
  const lineIds: [string, string] = [ids.next(), ids.next()];
  const coderIds: [string, string] = [ids.next(), ids.next()];
  for (const [place, lineId] of lineIds.entries()) {
    const code = String(place + 1);
    const coderId = coderIds[place] ?? '';
    await tx.insert(PackingLine, { id: lineId, siteId, code, name: `Line ${code}` });
    await tx.insert(Coder, { id: coderId, siteId, lineId, code: `C${code}` });
    await tx.insert(CoderClock, { id: ids.next(), coderId, validFrom, offsetSeconds: 0, uncertaintySeconds: 30 });
    await tx.insert(HopperLine, { id: ids.next(), siteId, lineId, hopperId, validFrom });
  }
  return { dryerId, hopperId, lineIds, coderIds };
}

async function addGoods(tx: Tx, siteId: string, wishes: PlantWishes) {
  const gradeId = await addGrade(tx, siteId, { code: 'WS2', name: 'White sugar, fine', tippingRule: 'released-only' });
  const riskGradeId = await addGrade(tx, siteId, { code: 'WS2R', name: 'White sugar', tippingRule: 'tip-at-risk' });
  const otherGradeId = await addGrade(tx, siteId, { code: 'BS1', name: 'Brown sugar', tippingRule: 'released-only' });
  const format = {
    siteId,
    packTareGrams: 12,
    packsPerPallet: wishes.packsPerPallet ?? 480,
    palletTareGrams: 25_000,
    codePattern: wishes.codePattern ?? 'L{y}{ddd}{line}{shift} {HH}:{mm}',
  };
  const [formatId, otherFormatId] = [ids.next(), ids.next()];
  await tx.insert(PackFormat, {
    ...format,
    id: formatId,
    code: 'WS-2KG',
    name: 'White sugar 2 kg',
    gtin: '09520123000103',
    nominalGrams: 2000,
    assumedLowerMilligrams: 1_990_000,
    assumedUpperMilligrams: 2_020_000,
    bestBeforeMonths: null,
  });
  await tx.insert(PackFormat, {
    ...format,
    id: otherFormatId,
    code: 'BS-1KG',
    name: 'Brown sugar 1 kg',
    gtin: '09520123000202',
    nominalGrams: 1000,
    assumedLowerMilligrams: 995_000,
    assumedUpperMilligrams: 1_015_000,
    bestBeforeMonths: 24,
  });
  await tx.insert(PackFormatGrade, [
    { id: ids.next(), formatId, gradeId },
    { id: ids.next(), formatId, gradeId: riskGradeId },
    { id: ids.next(), formatId: otherFormatId, gradeId: otherGradeId },
  ]);
  return { gradeId, riskGradeId, otherGradeId, formatId, otherFormatId };
}

async function addGrade(
  tx: Tx,
  siteId: string,
  grade: { code: string; name: string; tippingRule: 'released-only' | 'tip-at-risk' },
): Promise<string> {
  const id = ids.next();
  await tx.insert(Grade, { id, siteId, ...grade });
  const limits = [
    { property: 'moisture-percent', method: moistureMethod, required: true, minimum: null, maximum: '0.06' },
    { property: 'colour-iu', method: colourMethod, required: true, minimum: null, maximum: '45' },
  ];
  await tx.insert(GradeSpecification, { id: ids.next(), gradeId: id, validFrom, limits: canonicalText(limits) });
  return id;
}

async function addScales(tx: Tx, siteId: string) {
  const [scaleId, staleScaleId] = [ids.next(), ids.next()];
  const scale = { siteId, intervalMilligrams: 500_000, maximumPermissibleErrorMilligrams: 1_000_000 };
  await tx.insert(Scale, {
    ...scale,
    id: scaleId,
    code: 'S1',
    name: 'Bag scale 1',
    checkEveryHours: 720,
  });
  await tx.insert(Scale, {
    ...scale,
    id: staleScaleId,
    code: 'S2',
    name: 'Bag scale 2',
    checkEveryHours: 24,
  });
  const check = { deviationMilligrams: 0, passed: true, personId: null };
  await tx.insert(ScaleCheck, [
    { ...check, id: ids.next(), scaleId, checkedAt: '2026-03-12T05:00:00.000Z' },
    { ...check, id: ids.next(), scaleId: staleScaleId, checkedAt: '2026-03-09T05:00:00.000Z' },
  ]);
  const verification = { verifiedOn: '2026-01-01', verifiedUntilOn: '2027-12-31' };
  await tx.insert(ScaleVerification, [
    { ...verification, id: ids.next(), scaleId },
    { ...verification, id: ids.next(), scaleId: staleScaleId },
  ]);
  return { scaleId, staleScaleId };
}

async function addPlaces(tx: Tx, siteId: string) {
  const customerId = ids.next();
  const placeIds = { store: ids.next(), dock: ids.next() };
  await tx.insert(Customer, { id: customerId, siteId, code: 'K-001', gln: '9524567000019' });
  const contact = { name: 'Fernhill Foods (invented)', address: '1 Example Way\nFernhill', telephone: null };
  await tx.insert(CustomerContact, { customerId, ...contact });
  await tx.insert(StorePlace, [
    { id: placeIds.store, siteId, code: 'LANE-1', kind: 'store' },
    { id: placeIds.dock, siteId, code: 'DOCK-1', kind: 'dock' },
  ]);
  return { customerId, placeIds };
}
