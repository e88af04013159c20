import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { aPerson, signedIn, type SignedInPerson } from '../../../test/support/a-person.js';
import { aPlant, type Plant } from '../../../test/support/a-plant.js';
import { openHouse, type TestHouse } from '../../../test/support/house.js';
import type { Role } from '../../platform/actor.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { packWeighersOf } from '../pack-weighers.js';

describe('the pages of pack weighers', () => {
  let house: TestHouse;
  let plant: Plant;
  let administrator: SignedInPerson;
  let manager: SignedInPerson;

  beforeAll(async () => {
    house = await openHouse();
    plant = await aPlant(house);
    administrator = await someone('administrator');
    manager = await someone('plant-manager');
  });
  afterAll(async () => {
    await house.close();
  });

  const someone = async (role: Role): Promise<SignedInPerson> =>
    signedIn(house, await aPerson(house, plant.siteId, { roles: [role] }));
  const weighers = () => packWeighersOf(house.app.get<ReadFrom>(READER, { strict: false }), plant.siteId);
  const entered = (wishes: Record<string, string> = {}) => ({
    machineCode: 'Weigher-Hall-1',
    code: 'W1',
    lineId: plant.lineIds[0],
    stepGrams: '0,2',
    errorGrams: '0.5',
    headCount: '14',
    countsPacks: 'on',
    ...wishes,
  });
  const tokenIn = (page: string): string | undefined => /<p class="code">([\w-]{20,})<\/p>/.exec(page)?.[1];
  const send = (token: string | undefined) =>
    house.app
      .getHttpAdapter()
      .getInstance()
      .inject({
        method: 'POST',
        url: '/api/fill-weights',
        headers: { authorization: `Bearer ${token}`, 'content-type': 'application/x-ndjson' },
        payload: '',
      });

  it('add a weigher with its machine, and show the token once', async () => {
    const page = await administrator.send('/set-up/pack-weighers', entered(), 'weigher-key-1');
    expect(page.status).toBe(200);
    const token = tokenIn(page.text);
    expect(page.text).toContain('Back to pack weigher W1');
    expect((await send(token)).statusCode).toBe(201);
    expect(await weighers()).toMatchObject([
      {
        ...{ code: 'W1', deviceCode: 'weigher-hall-1', stepMilligrams: 200, maximumPermissibleErrorMilligrams: 500 },
        ...{ headCount: 14, countsPacks: true, rejectsPacks: false, takesMqtt: false },
      },
    ]);
    const again = await administrator.send('/set-up/pack-weighers', entered(), 'weigher-key-1');
    expect(tokenIn(again.text)).toBeUndefined();
    expect(again.text).toContain('shown already');
    expect(await weighers()).toHaveLength(1);
  });

  it('show the form again with what was entered, and add neither machine nor weigher', async () => {
    const fine = await administrator.send('/set-up/pack-weighers', entered({ stepGrams: '0.2005', code: 'W7' }));
    expect(fine.status).toBe(422);
    expect(fine.text).toContain('At most 3 digits');
    expect(fine.text).toContain('value="0.2005"');
    const taken = await administrator.send('/set-up/pack-weighers', entered({ machineCode: 'weigher-hall-9' }));
    expect(taken.status).toBe(409);
    // The machine went with the weigher that could not be added, so its name is still free.
    const good = await administrator.send(
      '/set-up/pack-weighers',
      entered({ machineCode: 'weigher-hall-9', code: 'W9' }),
    );
    expect(good.status).toBe(200);
    const machine = await administrator.send('/set-up/pack-weighers', entered({ code: 'W8' }));
    expect(machine.status).toBe(409);
  });

  it('let only an administrator give out tokens, and a plant manager do the rest', async () => {
    const [one] = await weighers();
    const at = `/set-up/pack-weighers/${one?.id ?? ''}`;
    expect((await manager.send('/set-up/pack-weighers', entered({ code: 'W5' }))).status).toBe(403);
    expect((await manager.send(`${at}/token`, {})).status).toBe(403);
    const list = (await manager.get('/set-up/pack-weighers')).text;
    expect(list).toContain('An administrator adds a pack weigher');
    expect(list).not.toContain('form-weigher');
    expect((await manager.send(`${at}/way`, { takesMqtt: 'on' })).status).toBe(303);
    expect((await weighers())[0]?.takesMqtt).toBe(true);
    expect((await manager.get(at)).text).toContain('no broker is named in the settings');
    expect((await manager.send(`${at}/way`, {})).status).toBe(303);
    expect((await weighers())[0]?.takesMqtt).toBe(false);
    const lead = await someone('line-lead');
    expect((await lead.get(at)).text).not.toContain('<form id="form-way"');
    expect((await lead.send(`${at}/way`, { takesMqtt: 'on' })).status).toBe(403);
  });

  it('give a new token, and the old one is worth nothing', async () => {
    const [one] = await weighers();
    const at = `/set-up/pack-weighers/${one?.id ?? ''}`;
    const first = tokenIn((await administrator.send(`${at}/token`, {})).text);
    const second = tokenIn((await administrator.send(`${at}/token`, {})).text);
    expect((await send(first)).statusCode).toBe(401);
    expect((await send(second)).statusCode).toBe(201);
  });

  it('take a weigher off its line for a reason, and then know it no more', async () => {
    const [one] = await weighers();
    const at = `/set-up/pack-weighers/${one?.id ?? ''}`;
    const silent = await manager.send(`${at}/withdrawal`, { reason: '' });
    expect(silent.status).toBe(422);
    expect((await manager.send(`${at}/withdrawal`, { reason: 'moved' })).status).toBe(303);
    expect((await weighers()).map(({ code }) => code)).not.toContain('W1');
    expect((await manager.get(at)).status).toBe(404);
    expect((await manager.send(`${at}/way`, { takesMqtt: 'on' })).status).toBe(404);
  });

  it('are reached from the set-up', async () => {
    expect((await manager.get('/set-up')).text).toContain('href="/set-up/pack-weighers"');
    const site = await manager.get('/set-up/pack-weighers/not-an-id');
    expect(site.status).toBe(400);
  });
});
