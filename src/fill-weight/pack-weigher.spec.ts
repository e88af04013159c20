import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { aPackWeigher } from '../../test/support/a-pack-weigher.js';
import { aPerson, signedIn } from '../../test/support/a-person.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { EnrolDevice } from '../people/enrol-device.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { AddPackWeigher } from './add-pack-weigher.js';
import { packWeigherOfDevice } from './pack-weighers.js';
import { WithdrawPackWeigher } from './withdraw-pack-weigher.js';

describe('a pack weigher', () => {
  let house: TestHouse;
  let plant: Plant;
  let reader: ReadFrom;
  const asked = () => asking(plant.actor);

  beforeAll(async () => {
    house = await openHouse();
    plant = await aPlant(house);
    reader = house.app.get<ReadFrom>(READER, { strict: false });
  });
  afterAll(async () => {
    await house.close();
  });

  it('is set up on a line over the JSON route, and listed with nothing received yet', async () => {
    const { deviceId } = await aPackWeigher(house, plant, { code: 'OLD' });
    const manager = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['plant-manager'] }));
    const listed = await manager.get('/api/pack-weighers');
    const { items } = listed.body as { items: { id: string }[] };
    expect(items).toMatchObject([{ code: 'OLD', deviceId, lineCode: '1', weightCount: 0 }]);
    const gone = await manager.post(`/api/pack-weighers/${items[0]?.id}/withdrawal`, { reason: 'sold' });
    expect(gone.status).toBe(201);
    const form = { deviceId, lineId: plant.lineIds[1], code: 'NEW', stepMilligrams: 100 };
    const rest = { maximumPermissibleErrorMilligrams: 500, countsPacks: false, rejectsPacks: false };
    const again = await manager.post('/api/pack-weighers', { ...form, ...rest });
    expect(again.status).toBe(201);
    expect(await packWeigherOfDevice(reader, deviceId)).toMatchObject({ code: 'NEW', lineCode: '2', headCount: null });
  });

  it('is a machine: neither a tablet nor a machine that weighs already, and no code of another', async () => {
    const tablet = await house.get(EnrolDevice).execute(asked(), { code: 'tablet-9', kind: 'shared-tablet' });
    const form = { lineId: plant.lineIds[0], code: 'T9', stepMilligrams: 100, maximumPermissibleErrorMilligrams: 500 };
    const marks = { countsPacks: false, rejectsPacks: false };
    const add = (deviceId: string, code: string) =>
      house.get(AddPackWeigher).execute(asked(), { ...form, ...marks, deviceId, code });
    await expect(add(tablet.id, 'T9')).rejects.toMatchObject({ code: 'device-is-no-machine' });
    const one = await aPackWeigher(house, plant);
    await expect(add(one.deviceId, 'T9')).rejects.toMatchObject({ code: 'machine-weighs-already' });
    await aPackWeigher(house, plant, { code: 'TAKEN' });
    await expect(aPackWeigher(house, plant, { code: 'TAKEN' })).rejects.toMatchObject({ code: 'code-taken' });
  });

  it('is taken off its line once', async () => {
    const { weigherId, deviceId } = await aPackWeigher(house, plant);
    const withdraw = () => house.get(WithdrawPackWeigher).execute(asked(), weigherId, { reason: 'moved' });
    await withdraw();
    expect(await packWeigherOfDevice(reader, deviceId)).toBeNull();
    await expect(withdraw()).rejects.toMatchObject({ code: 'already-corrected' });
  });
});
