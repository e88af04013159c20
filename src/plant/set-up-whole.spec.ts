import { afterEach, beforeEach, describe, expect, it } from '@jest/globals';
import { readerOf } from '../../test/support/a-bag.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { AddBagType } from './add-bag-type.js';
import { bagTypesOf } from './bag-types.js';
import { ChangeBagType } from './change-bag-type.js';
import { coderOfLine, hopperOfLine, specificationAt } from './plant-facts.js';
import { SetRuleSet } from './set-rule-set.js';
import { SetUpGrade } from './set-up-grade.js';
import { SetUpLine } from './set-up-line.js';
import { SetUsualNet } from './set-usual-net.js';

const fourLoops = {
  code: 'FOURLOOP',
  name: 'Four loops',
  usualTareGrams: 2_000,
  leastTareGrams: 1_800,
  mostTareGrams: 2_200,
  safeLoadGrams: 1_250_000,
};

describe('things of the plant that are set up whole', () => {
  let house: TestHouse;
  let plant: Plant;
  beforeEach(async () => {
    house = await openHouse();
    plant = await aPlant(house);
  });
  afterEach(async () => {
    await house.close();
  });

  it('sets a line up with the hopper that feeds it and a coder called after it', async () => {
    const form = { code: '7', name: 'Line 7', hopperId: plant.hopperId };
    const { id } = await house.get(SetUpLine).execute(asking(plant.actor), form);
    expect(await coderOfLine(readerOf(house), id)).toMatchObject({ code: 'C7' });
    expect(await hopperOfLine(readerOf(house), id, house.clock.now())).toBe(plant.hopperId);
  });

  it('sets up neither line nor coder where one code is taken, or the hopper is not known', async () => {
    const form = { code: '7', name: 'Line 7', hopperId: plant.hopperId, coderCode: 'C1' };
    await expect(house.get(SetUpLine).execute(asking(plant.actor), form)).rejects.toMatchObject({ code: 'code-taken' });
    const elsewhere = { code: '7', name: 'Line 7', hopperId: plant.dryerId };
    await expect(house.get(SetUpLine).execute(asking(plant.actor), elsewhere)).rejects.toMatchObject({
      kind: 'hopper',
    });
    const rows = await readerOf(house).sql`SELECT "id" FROM "packing_line" WHERE "code" = '7'`;
    expect(rows).toEqual([]);
  });

  it('sets a grade up with its first limits', async () => {
    const line = { property: 'moisture-percent', method: 'GS2/1/3/9-15', required: true, maximum: '0.06' };
    const form = { code: 'XF', name: 'Extra fine', tippingRule: 'released-only', lines: [line] };
    const { id } = await house.get(SetUpGrade).execute(asking(plant.actor), form);
    expect(await specificationAt(readerOf(house), id, house.clock.now())).toEqual([{ ...line, minimum: null }]);
    const again = house.get(SetUpGrade).execute(asking(plant.actor), form);
    await expect(again).rejects.toMatchObject({ code: 'code-taken' });
    const twice = { ...form, code: 'XG', lines: [line, line] };
    await expect(house.get(SetUpGrade).execute(asking(plant.actor), twice)).rejects.toMatchObject({
      code: 'specification-line-twice',
    });
  });

  it('changes what is known of a type of bag, and keeps the old row for the bags that were filled', async () => {
    const { id } = await house.get(AddBagType).execute(asking(plant.actor), fourLoops);
    await expect(house.get(AddBagType).execute(asking(plant.actor), fourLoops)).rejects.toMatchObject({
      code: 'code-taken',
    });
    const heavier = { ...fourLoops, usualTareGrams: 2_100 };
    const changed = await house.get(ChangeBagType).execute(asking(plant.actor), id, heavier);
    expect(await bagTypesOf(readerOf(house), plant.siteId)).toEqual([
      { id: changed.id, siteId: plant.siteId, ...heavier },
    ]);
    const again = house.get(ChangeBagType).execute(asking(plant.actor), id, heavier);
    await expect(again).rejects.toMatchObject({ code: 'already-corrected' });
    const unknown = house.get(ChangeBagType).execute(asking(plant.actor), plant.dryerId, heavier);
    await expect(unknown).rejects.toMatchObject({ kind: 'bag-type' });
  });

  it.each([
    [{ leastTareGrams: 2_001 }, 'tare-band-crossed'],
    [{ mostTareGrams: 1_999 }, 'tare-band-crossed'],
    [{ safeLoadGrams: 2_200 }, 'tare-above-safe-load'],
  ])('refuses a type of bag that cannot be: %j', async (wrong, code) => {
    const add = house.get(AddBagType).execute(asking(plant.actor), { ...fourLoops, ...wrong });
    await expect(add).rejects.toMatchObject({ code });
  });

  it('refuses a usual net whose ends are crossed', async () => {
    const form = { gradeId: plant.gradeId, leastNetGrams: 1_000_001, mostNetGrams: 1_000_000 };
    await expect(house.get(SetUsualNet).execute(asking(plant.actor), form)).rejects.toMatchObject({
      code: 'usual-net-crossed',
    });
  });

  it('lets whoever sets the plant up give the first rules only', async () => {
    const form = { kind: 'vehicle-check', checkPoints: [{ code: 'clean', text: 'It is clean' }] };
    const first = () => house.get(SetRuleSet).execute(asking(plant.actor), form, { onlyFirst: true });
    await first();
    await expect(first()).rejects.toMatchObject({ code: 'rules-there-already' });
  });
});
