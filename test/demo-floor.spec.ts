import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it, jest } from '@jest/globals';
import { serveDemo, type ServedDemo } from '../src/demo/serve-demo.js';
import { readTruth, type DemoTruth } from '../src/demo/truth.js';
import { RenewDeviceToken } from '../src/people/renew-device-token.js';
import { READER, type ReadFrom } from '../src/platform/database/reading.js';
import { languages } from '../src/platform/sentences/language.js';
import { sentencesOf } from '../src/platform/sentences/sentences.js';
import { copyOfDemo, type Place } from './support/a-demo.js';
import { aPlant } from './support/a-plant.js';
import { anActor, asking, openHouse } from './support/house.js';

const options = { days: 2, seed: 1, size: 'usual' } as const;

let place: Place;
let truth: DemoTruth;
let served: ServedDemo;
let address: string;
let printed: string;

beforeAll(async () => {
  place = await copyOfDemo(options);
  const known = readTruth(place.config.dataFolder);
  if (known === null) throw new Error('the demo has no truth');
  truth = known;
  const terminal = jest.spyOn(process.stdout, 'write').mockReturnValue(true);
  served = await serveDemo({ ...place.config, port: 0 }, truth);
  printed = terminal.mock.calls.map(([text]) => String(text)).join('');
  terminal.mockRestore();
  address = (await served.house.getUrl()).replace('[::1]', '127.0.0.1');
}, 300_000);

afterAll(async () => {
  await served.close();
  await place.remove();
});

interface Answer {
  readonly status: number;
  readonly text: string;
  readonly location: string | null;
  readonly cookies: readonly string[];
}

async function ask(path: string, init: RequestInit = {}): Promise<Answer> {
  const answer = await fetch(address + path, { redirect: 'manual', ...init });
  const cookies = answer.headers.getSetCookie().map((one) => one.split(';')[0] ?? '');
  return { status: answer.status, text: await answer.text(), location: answer.headers.get('location'), cookies };
}

const pressed = { method: 'POST', headers: { Accept: 'text/html', 'Sec-Fetch-Site': 'same-origin' } };

/** The cookie of a browser in which somebody pressed this device. */
async function asDevice(code: string): Promise<string> {
  const { status, cookies } = await ask(`/demo/devices/${code}`, pressed);
  expect([status, cookies.length]).toEqual([303, 1]);
  return cookies[0] ?? '';
}

function signIn(cookie: string, form: object): Promise<Answer> {
  const headers = { 'Content-Type': 'application/json', Cookie: cookie };
  return ask('/api/sessions', { method: 'POST', headers, body: JSON.stringify(form) });
}

/** Code, PIN and badge, as they stand on the terminal. */
const printedProofs = (): readonly { code: string; pin: string; badge: string }[] =>
  [...printed.matchAll(/^ {2}(\w+) +(\d{4}) {2}([A-Z2-7]{26})$/gm)].map(([, code = '', pin = '', badge = '']) => ({
    ...{ code, pin, badge },
  }));

describe('what the demo prints at its start', () => {
  it('names a tablet for each line and a handheld, and the one address where a browser becomes them', async () => {
    expect(printed).toContain('tablet-line-1, tablet-line-2, handheld-dock');
    const [, page = ''] = /^ {2}(http\S+\/demo)$/m.exec(printed) ?? [];
    expect((await fetch(page)).status).toBe(200);
  });

  it('gives badges and PINs that sign in, each its own person, and that are the same in every demo', async () => {
    const proofs = printedProofs();
    expect(proofs.map(({ code }) => code)).toEqual('ilka tomas ruth emil piet nora agnes oskar helen'.split(' '));
    expect(proofs[1]).toEqual({ code: 'tomas', pin: '5829', badge: 'DEMOTOMAS77777777777777777' });
    const cookie = await asDevice('tablet-line-1');
    const page = await ask('/sign-in', { headers: { Cookie: cookie, Accept: 'text/html' } });
    const people = new Map(
      [...page.text.matchAll(/<option value="([\w-]{36})"[^>]*>([^<]+)</g)].map(([, id, name]) => [name, id]),
    );
    expect(people.size).toBe(proofs.length);
    for (const { code, pin, badge } of proofs) {
      const byBadge = await signIn(cookie, { proof: 'badge', badge });
      expect([code, byBadge.status, (JSON.parse(byBadge.text) as { person: { code: string } }).person.code]).toEqual([
        code,
        201,
        code,
      ]);
      const name = [...people.keys()].find((one) => one?.toLowerCase().startsWith(code));
      const byPin = await signIn(cookie, { proof: 'pin', person: people.get(name), pin });
      expect([code, byPin.status]).toEqual([code, 201]);
    }
  });
});

describe('a browser that looks at the demo', () => {
  const tomas = { proof: 'badge', badge: 'DEMOTOMAS77777777777777777' };

  it('is no device until it is pressed to be one: looking changes nothing', async () => {
    const page = await ask('/demo', { headers: { Accept: 'text/html' } });
    expect([page.status, page.cookies]).toEqual([200, []]);
    for (const { badge, pin } of printedProofs()) {
      expect(page.text).toContain(badge);
      expect(page.text).toContain(pin);
    }
    const refused = await signIn('', tomas);
    expect([refused.status, refused.text.includes('device-not-enrolled')]).toEqual([409, true]);
  });

  it('is a handheld after one press, and none again after another', async () => {
    const cookie = await asDevice('handheld-dock');
    const headers = { Cookie: cookie, Accept: 'text/html' };
    expect((await ask('/demo', { headers })).text).toContain('It is handheld-dock');
    const left = await ask('/demo/no-device', { ...pressed, headers: { ...pressed.headers, Cookie: cookie } });
    expect([left.status, left.location, left.cookies]).toEqual([303, '/sign-in', ['packthread-device=']]);
  });

  it('is made a device by no page from elsewhere, and one that the demo has not is not known', async () => {
    const headers = { Accept: 'text/html', 'Sec-Fetch-Site': 'cross-site' };
    const foreign = await ask('/demo/devices/tablet-line-1', { method: 'POST', headers });
    expect([foreign.status, foreign.cookies]).toEqual([403, []]);
    expect((await ask('/demo/devices/tablet-line-9', pressed)).status).toBe(404);
  });

  it('speaks of all this in both languages', () => {
    const codesIn = languages.map((language) =>
      [...sentencesOf(language).keys()].filter((code) => code.startsWith('demo-')).sort(),
    );
    expect(codesIn[0]?.length).toBeGreaterThan(8);
    expect(codesIn[1]).toEqual(codesIn[0]);
  });

  it('may lift a hold on a tablet with badge and PIN', async () => {
    const cookie = await asDevice('tablet-line-2');
    const begun = await signIn(cookie, { proof: 'badge', badge: 'DEMOAGNES77777777777777777' });
    const session = begun.cookies.find((one) => one.startsWith('packthread-session')) ?? '';
    const { csrfToken } = JSON.parse(begun.text) as { csrfToken: string };
    const all = { Cookie: `${cookie}; ${session}`, 'x-csrf-token': csrfToken, 'Content-Type': 'application/json' };
    const post = (path: string, body: object): Promise<Answer> =>
      ask(path, {
        method: 'POST',
        headers: { ...all, 'Idempotency-Key': randomUUID() },
        body: JSON.stringify(body),
      });
    const { items } = JSON.parse((await ask('/api/holds', { headers: all })).text) as {
      items: { number: string; liftedAt: string | null }[];
    };
    const open = items.find(({ liftedAt }) => liftedAt === null);
    expect(open).toBeDefined();
    const lift = { hold: open?.number, reason: 'Looked at again' };
    const wrong = await post('/api/hold-lifts', { ...lift, badge: 'DEMOTOMAS77777777777777777', pin: '6018' });
    expect(wrong.text).toContain('problem:proof-failed');
    expect((await post('/api/hold-lifts', { ...lift, badge: 'DEMOAGNES77777777777777777', pin: '6018' })).status).toBe(
      201,
    );
  });

  it('is offered no device whose token was renewed meanwhile: what it would get is worth nothing', async () => {
    const { siteId } = truth;
    const [device] = await served.house.get<ReadFrom>(READER, { strict: false }).sql<{
      id: string;
    }>`SELECT "id" FROM "device" WHERE "code" = 'tablet-line-2'`;
    await served.house
      .get(RenewDeviceToken, { strict: false })
      .execute(asking(anActor(siteId, 'administrator')), device?.id ?? '');
    const page = await ask('/demo', { headers: { Accept: 'text/html' } });
    expect([page.text.includes('tablet-line-1'), page.text.includes('tablet-line-2')]).toEqual([true, false]);
    expect((await ask('/demo/devices/tablet-line-2', pressed)).status).toBe(404);
  });
});

describe('a plant that is no demo', () => {
  it('has no such page, whoever asks', async () => {
    const house = await openHouse();
    await aPlant(house);
    await house.app.listen(0, '127.0.0.1');
    const url = await house.app.getUrl();
    const statuses = await Promise.all([
      fetch(`${url}/demo`),
      fetch(`${url}/demo/devices/tablet-line-1`, pressed),
      fetch(`${url}/demo/no-device`, pressed),
    ]).then((answers) => answers.map(({ status }) => status));
    await house.close();
    expect(statuses).toEqual([404, 404, 404]);
  });

  it('is not served as a demo because its database is named beside the folder of one', async () => {
    const other = await copyOfDemo(options);
    await expect(serveDemo({ ...other.config, port: 0 }, { ...truth, siteId: 'another' })).rejects.toThrow(
      /is not the demo/,
    );
    await other.remove();
  });
});
