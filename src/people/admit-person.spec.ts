import { afterEach, beforeEach, describe, expect, it } from '@jest/globals';
import { readerOf } from '../../test/support/a-bag.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { AdmitPerson } from './admit-person.js';
import { personOf } from './people.js';

describe('admitting a person', () => {
  let house: TestHouse;
  let plant: Plant;
  beforeEach(async () => {
    house = await openHouse();
    plant = await aPlant(house);
  });
  afterEach(async () => {
    await house.close();
  });

  const admit = (name: string, code?: string, key?: string) =>
    house.get(AdmitPerson).execute(asking(plant.actor, key), { name, role: 'line-lead', ...(code && { code }) });

  it('gives code, name, role and a one-time password in one, and makes the code from the name', async () => {
    const admitted = await admit('José Núñez-Moor');
    expect(admitted.code).toBe('jmoor');
    expect(admitted.password).toMatch(/^(\w{4}-){3}\w{4}$/);
    expect(await personOf(readerOf(house), plant.siteId, admitted.id)).toMatchObject({
      name: 'José Núñez-Moor',
      roles: ['line-lead'],
      proofs: ['password'],
    });
  });

  it('finds another code where the usual one is taken, and one for a name that has no such letters', async () => {
    await admit('Jo Moor');
    expect((await admit('Jill Moor')).code).toBe('jmoor2');
    expect((await admit('山田')).code).toBe('person');
    expect((await admit('Ö')).code).toBe('person2');
  });

  it('refuses a code that is somebody’s, and shows the password once only', async () => {
    const first = await admit('Jo Moor', 'jo', 'same-key-1');
    await expect(admit('Joan Moor', 'JO')).rejects.toMatchObject({ code: 'person-code-taken' });
    const again = await admit('Jo Moor', 'jo', 'same-key-1');
    expect(again).toEqual({ id: first.id, code: 'jo', password: null });
  });
});
