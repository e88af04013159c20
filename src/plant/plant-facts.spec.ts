import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { openHouse, type TestHouse } from '../../test/support/house.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { NotFound } from '../platform/refusal.js';
import {
  coderClockAt,
  coderOf,
  coderOfLine,
  customerOf,
  dryerOf,
  formatOf,
  gradeOf,
  gradesOfFormat,
  hopperOf,
  hopperOfLine,
  lineOf,
  linesOfHopper,
  onlySiteId,
  placeOf,
  ruleSetAt,
  scaleStandingAt,
  shiftAt,
  siteOf,
  specificationAt,
} from './plant-facts.js';

const at = '2026-03-12T06:00:00.000Z';
const nobody = '00000000-0000-7000-8000-00000000dead';

describe('the facts of the plant', () => {
  let house: TestHouse;
  let plant: Plant;
  let from: ReadFrom;
  beforeAll(async () => {
    house = await openHouse();
    plant = await aPlant(house);
    from = house.app.get<ReadFrom>(READER, { strict: false });
  });
  afterAll(async () => {
    await house.close();
  });

  it('tell the site and its numbers', async () => {
    expect(await onlySiteId(from)).toBe(plant.siteId);
    expect(await siteOf(from, plant.siteId)).toEqual({
      id: plant.siteId,
      code: 'AQ',
      name: 'Alder Quay',
      timeZone: 'Europe/Berlin',
      productionDayStart: '06:00',
      gln: '9520123000011',
      companyPrefix: '9520123',
      ssccExtensionDigit: 0,
      paperLanguage: 'en',
    });
  });

  it('tell the shift of an instant, and of one before the first pattern', async () => {
    expect(await shiftAt(from, plant.siteId, at)).toMatchObject({ productionOn: '2026-03-12', shiftCode: 'M' });
    expect(await shiftAt(from, plant.siteId, '2026-03-12T04:59:59.999Z')).toMatchObject({
      productionOn: '2026-03-11',
      shiftCode: 'N',
    });
    expect(await shiftAt(from, plant.siteId, '2025-06-01T12:00:00.000Z')).toMatchObject({ shiftCode: 'A' });
  });

  it('tell which hopper feeds which line', async () => {
    expect(await hopperOf(from, plant.hopperId)).toMatchObject({ code: 'H1', capacityGrams: 4_000_000 });
    expect(await lineOf(from, plant.lineIds[0])).toMatchObject({ code: '1' });
    expect(await hopperOfLine(from, plant.lineIds[1], at)).toBe(plant.hopperId);
    expect(await hopperOfLine(from, plant.lineIds[1], '2025-01-01T00:00:00.000Z')).toBeNull();
    const periods = await linesOfHopper(from, plant.hopperId);
    expect(periods.map((period) => period.lineId).sort()).toEqual([...plant.lineIds].sort());
    expect(periods[0]).toMatchObject({ fromAt: '2026-01-01T00:00:00.000Z', untilAt: null });
  });

  it('tell grades, formats and what a grade must be', async () => {
    expect(await gradeOf(from, plant.riskGradeId)).toMatchObject({ tippingRule: 'tip-at-risk' });
    expect(await formatOf(from, plant.formatId)).toMatchObject({ gtin: '09520123000103', nominalGrams: 2000 });
    expect(await gradesOfFormat(from, plant.formatId)).toEqual([plant.gradeId, plant.riskGradeId].sort());
    expect(await specificationAt(from, plant.gradeId, at)).toContainEqual(
      expect.objectContaining({ property: 'moisture-percent', maximum: '0.06' }),
    );
    expect(await specificationAt(from, plant.gradeId, '2020-01-01T00:00:00.000Z')).toHaveLength(2);
  });

  it('tell coder, dryer, customer and place', async () => {
    expect(await coderOfLine(from, plant.lineIds[0])).toMatchObject({ id: plant.coderIds[0], code: 'C1' });
    expect(await coderOf(from, plant.coderIds[1])).toMatchObject({ lineId: plant.lineIds[1] });
    expect(await coderOfLine(from, nobody)).toBeNull();
    expect(await coderClockAt(from, plant.coderIds[0], at)).toEqual({ offsetSeconds: 0, uncertaintySeconds: 30 });
    expect(await coderClockAt(from, plant.coderIds[0], '2020-01-01T00:00:00.000Z')).toEqual({
      offsetSeconds: 0,
      uncertaintySeconds: 120,
    });
    expect(await dryerOf(from, plant.dryerId)).toMatchObject({ code: 'D1' });
    expect(await customerOf(from, plant.customerId)).toMatchObject({ code: 'K-001', telephone: null });
    expect(await placeOf(from, plant.placeIds.dock)).toMatchObject({ kind: 'dock' });
    expect(await ruleSetAt(from, plant.siteId, 'vehicle-check', at)).toBeNull();
  });

  it('tell what a scale is good for', async () => {
    expect(await scaleStandingAt(from, plant.scaleId, at)).toMatchObject({
      isOverdue: false,
      hasFailed: false,
      isVerifiedForTrade: true,
    });
    expect(await scaleStandingAt(from, plant.staleScaleId, at)).toMatchObject({ isOverdue: true, hasFailed: false });
    expect(await scaleStandingAt(from, plant.scaleId, '2026-01-01T00:00:00.000Z')).toMatchObject({
      lastCheckedAt: null,
      isOverdue: true,
    });
  });

  it('hold a scale for verified up to the end of its last day on the plant’s calendar', async () => {
    const verified = async (when: string) => (await scaleStandingAt(from, plant.scaleId, when)).isVerifiedForTrade;
    expect(await verified('2027-12-31T22:59:59.999Z')).toBe(true);
    expect(await verified('2027-12-31T23:00:00.000Z')).toBe(false);
  });

  it('are not found where nobody set them up', async () => {
    const readers = [siteOf, dryerOf, hopperOf, lineOf, coderOf, gradeOf, formatOf, customerOf, placeOf];
    for (const read of readers) await expect(read(from, nobody)).rejects.toThrow(NotFound);
    for (const read of [specificationAt, scaleStandingAt, shiftAt]) {
      await expect(read(from, nobody, at)).rejects.toThrow(NotFound);
    }
  });
});
