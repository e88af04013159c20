import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { Controller, Get, Post, type Type } from '@nestjs/common';
import { FastifyAdapter, type NestFastifyApplication } from '@nestjs/platform-fastify';
import { Test } from '@nestjs/testing';
import cookie from '@fastify/cookie';
import request from 'supertest';
import { aPerson, signedIn } from '../../test/support/a-person.js';
import { aPlant } from '../../test/support/a-plant.js';
import { anActor, asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { JournalModule } from '../journal/journal.module.js';
import { AnyoneMay, May, mayDo, permissions, roles, type Permission, type Role } from '../platform/actor.js';
import { SystemIds } from '../platform/ids.js';
import { PlatformModule } from '../platform/platform.module.js';
import { ProblemFilter } from '../platform/web/problem.filter.js';
import { Acting, Asking, Looking, type Viewer } from '../platform/web/request.js';
import { AddMachine } from './add-machine.js';
import { EnrolDevice } from './enrol-device.js';
import { PeopleModule } from './people.module.js';
import { RenewDeviceToken } from './renew-device-token.js';

const permissionNames = Object.keys(permissions) as Permission[];

/** One route for each permission, at /ask/<permission>. */
function routeFor(permission: Permission): Type {
  @Controller(`ask/${permission}`)
  class Route {
    @Get()
    @May(permission)
    ask(): { asked: string } {
      return { asked: permission };
    }
  }
  return Route;
}

@Controller('seen')
class SeenRoute {
  @Get('actor')
  @May('read')
  actor(@Acting() actor: object): object {
    return actor;
  }

  @Get('viewer')
  @May('read')
  viewer(@Looking() viewer: Viewer): object {
    return viewer;
  }

  @Post('asked')
  @May('read')
  asked(@Asking() asked: object): object {
    return asked;
  }

  @Get('anyone')
  @AnyoneMay()
  anyone(): object {
    return { open: true };
  }

  @Get('silent')
  silent(): object {
    return { open: true };
  }
}

describe('who may do what', () => {
  let house: TestHouse;
  let app: NestFastifyApplication;
  let siteId: string;
  let machine: { id: string; token: string };
  beforeAll(async () => {
    house = await openHouse();
    ({ siteId } = await aPlant(house, { timeZone: 'Europe/Berlin' }));
    const { config, databases, clock } = house;
    const module = await Test.createTestingModule({
      imports: [PlatformModule.on({ config, databases, clock, ids: new SystemIds() }), JournalModule, PeopleModule],
      controllers: [...permissionNames.map(routeFor), SeenRoute],
    }).compile();
    app = module.createNestApplication<NestFastifyApplication>(new FastifyAdapter(), { logger: false });
    app.useGlobalFilters(new ProblemFilter());
    await app.register(cookie);
    await app.init();
    await app.getHttpAdapter().getInstance().ready();
    const added = await house.get(AddMachine).execute(administrator(), { code: 'Weigher-1' });
    machine = { id: added.id, token: added.token ?? '' };
  });
  afterAll(async () => {
    await app.close();
    await house.close();
  });

  const administrator = (): ReturnType<typeof asking> => asking(anActor(siteId, 'administrator'));
  const server = (): ReturnType<typeof request> => request(app.getHttpServer());
  const bearer = (token = machine.token): [string, string] => ['Authorization', `Bearer ${token}`];

  /** The header by which somebody with this role asks. */
  const headerOf = async (role: Role): Promise<[string, string]> => {
    if (role === 'device') return bearer();
    const person = await aPerson(house, siteId, { roles: [role] });
    return ['Cookie', (await signedIn(house, person)).cookie];
  };

  it.each(roles)(
    'lets through what the table allows a person or machine of the role %s, and nothing else',
    async (role) => {
      const header = await headerOf(role);
      const answered: string[] = [];
      for (const permission of permissionNames) {
        const answer = await server()
          .get(`/ask/${permission}`)
          .set(...header);
        if (answer.status === 200) answered.push(permission);
        else expect([answer.status, (answer.body as { type: string }).type]).toEqual([403, 'problem:not-permitted']);
      }
      expect(answered).toEqual(permissionNames.filter((permission) => mayDo([role], permission)));
    },
  );

  it('lets a person of two roles do what either may', async () => {
    const person = await aPerson(house, siteId, { roles: ['auditor', 'dispatch-clerk'] });
    const { cookie: session } = await signedIn(house, person);
    expect((await server().get('/ask/close-deliveries').set('Cookie', session)).status).toBe(200);
    expect((await server().get('/ask/decide').set('Cookie', session)).status).toBe(403);
  });

  it('lets nobody through who is not signed in, whatever the route', async () => {
    for (const permission of permissionNames) {
      const answer = await server().get(`/ask/${permission}`);
      expect([answer.status, (answer.body as { type: string }).type]).toEqual([401, 'problem:not-signed-in']);
    }
    expect((await server().get('/seen/anyone')).status).toBe(200);
  });

  it('lets nobody use a route that does not say who may', async () => {
    const { cookie: session } = await signedIn(house, await aPerson(house, siteId, { roles: ['administrator'] }));
    expect((await server().get('/seen/silent').set('Cookie', session)).status).toBe(403);
  });

  it('knows a machine by its token, without a form’s token, and a person only by a session', async () => {
    const seen = await server()
      .get('/seen/actor')
      .set(...bearer());
    expect(seen.body).toEqual({ siteId, personId: null, deviceId: machine.id, roles: ['device'] });
    const asked = await server()
      .post('/seen/asked')
      .set(...bearer())
      .set('Idempotency-Key', 'weigher-1-0001')
      .set('Device-Time', '2026-03-12T06:00:02.250Z');
    expect(asked.status).toBe(201);
    expect(asked.body).toMatchObject({
      route: 'POST /seen/asked',
      key: 'weigher-1-0001',
      deviceOffsetMilliseconds: 2250,
    });
  });

  it('refuses a token that is unknown, replaced, or of an enrolled tablet, even beside a session', async () => {
    const tablet = await house.get(EnrolDevice).execute(administrator(), { code: 'tablet-1', kind: 'shared-tablet' });
    const old = await house.get(AddMachine).execute(administrator(), { code: 'weigher-2' });
    const fresh = await house.get(RenewDeviceToken).execute(administrator(), old.id);
    const { cookie: session } = await signedIn(house, await aPerson(house, siteId));
    for (const token of ['x'.repeat(43), tablet.token ?? '', old.token ?? '']) {
      const answer = await server()
        .get('/seen/actor')
        .set(...bearer(token))
        .set('Cookie', session);
      expect(answer.status).toBe(401);
    }
    expect(
      (
        await server()
          .get('/seen/actor')
          .set(...bearer(fresh.token ?? ''))
      ).status,
    ).toBe(200);
  });

  it('tells pages who looks, in the time of the plant', async () => {
    const person = await aPerson(house, siteId, { name: 'Jo Moor', roles: ['auditor'] });
    const { cookie: session } = await signedIn(house, person);
    const seen = await server().get('/seen/viewer?x=1').set('Cookie', session);
    expect(seen.body).toMatchObject({
      name: 'Jo Moor',
      siteName: 'Alder Quay',
      timeZone: 'Europe/Berlin',
      language: 'en',
      path: '/seen/viewer',
      actor: { siteId, personId: person.personId, deviceId: null, roles: ['auditor'] },
    });
    expect((seen.body as Viewer).csrfToken.length).toBeGreaterThan(20);
  });

  it('takes the key of a plain form from its hidden field, and asks for one', async () => {
    const me = await signedIn(house, await aPerson(house, siteId));
    const form = server().post('/seen/asked').set('Cookie', me.cookie).type('form');
    const asked = await form.send({ csrf: me.csrf, formKey: '0195862e-form-key' });
    expect(asked.body).toMatchObject({ key: '0195862e-form-key', deviceOffsetMilliseconds: null });
    const without = await server().post('/seen/asked').set('Cookie', me.cookie).type('form').send({ csrf: me.csrf });
    expect(without.status).toBe(422);
    const twice = await server().post('/seen/asked').set('Cookie', me.cookie).type('form').send('csrf=a&csrf=b');
    expect(twice.status).toBe(403);
  });
});
