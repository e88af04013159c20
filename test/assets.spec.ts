import { brotliDecompressSync, gunzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import request from 'supertest';
import { assetAddress, firstScript, houseModule } from '../src/platform/web/browser-files.js';
import { aPerson, signedIn } from './support/a-person.js';
import { aPlant } from './support/a-plant.js';
import { openHouse, type TestHouse } from './support/house.js';

let house: TestHouse;

beforeAll(async () => {
  house = await openHouse();
});
afterAll(async () => {
  await house.close();
});

const get = (path: string): ReturnType<ReturnType<typeof request>['get']> =>
  request(house.app.getHttpServer()).get(path);

/** The bytes as they came, not unpacked by the client. */
async function bytesOf(path: string, encoding: string): Promise<{ sent: Buffer; headers: Record<string, string> }> {
  const answer = await house.app.inject({ method: 'GET', url: path, headers: { 'accept-encoding': encoding } });
  return { sent: answer.rawPayload, headers: answer.headers as Record<string, string> };
}

describe('the style sheet and the browser modules', () => {
  it('stand under an address with their version and may be kept for a year', async () => {
    const answer = await get(assetAddress('house.css'));
    expect(answer.status).toBe(200);
    expect(answer.headers['content-type']).toBe('text/css; charset=utf-8');
    expect(answer.headers['cache-control']).toBe('public, max-age=31536000, immutable');
    const again = await get(assetAddress('house.css')).set('If-None-Match', answer.headers['etag'] ?? '');
    expect(again.status).toBe(304);
  });

  it('are served as modules, to whoever asks', async () => {
    const answer = await get(assetAddress(houseModule));
    expect([answer.status, answer.headers['content-type']]).toEqual([200, 'text/javascript; charset=utf-8']);
    expect(answer.text).toContain('import');
    expect(answer.text).not.toContain('sourceMappingURL');
  });

  it('may not be kept under the version of another day', async () => {
    const answer = await get('/assets/0123456789ab/house.css');
    expect([answer.status, answer.headers['cache-control']]).toEqual([200, 'no-store']);
  });

  it.each(['../main.js', 'platform/web/client/../request.js', '%2e%2e/start-house.js', 'main.js', 'house.ts'])(
    'are all that is served: %s is not',
    async (path) => {
      expect((await get(assetAddress(path))).status).toBe(404);
    },
  );

  it('come packed where the browser takes that', async () => {
    const plain = (await bytesOf(assetAddress('house.css'), 'identity')).sent;
    const brotli = await bytesOf(assetAddress('house.css'), 'gzip, deflate, br');
    const gzip = await bytesOf(assetAddress('house.css'), 'gzip;q=0.8, br;q=0');
    expect(brotli.headers).toMatchObject({ 'content-encoding': 'br', vary: 'Accept-Encoding' });
    expect(gzip.headers['content-encoding']).toBe('gzip');
    expect(brotliDecompressSync(brotli.sent)).toEqual(plain);
    expect(gunzipSync(gzip.sent)).toEqual(plain);
    expect(brotli.sent.length).toBeLessThan(plain.length / 2);
  });

  it('have a service worker at the root, for the whole house', async () => {
    const answer = await get('/service-worker.js');
    expect(answer.headers).toMatchObject({ 'service-worker-allowed': '/', 'cache-control': 'no-cache' });
    expect(answer.text).toContain(assetAddress('platform/web/client/service-worker.js'));
    expect(answer.headers['content-security-policy']).toContain("worker-src 'self'");
  });
});

describe('pages', () => {
  it('load one module, behind what hears keys before it can, and come packed', async () => {
    const plant = await aPlant(house);
    const person = await signedIn(house, await aPerson(house, plant.siteId));
    const url = '/plant';
    const headers = { cookie: person.cookie, accept: 'text/html', 'accept-encoding': 'br' };
    const answer = await house.app.inject({ method: 'GET', url, headers });
    expect(answer.headers['content-encoding']).toBe('br');
    const page = brotliDecompressSync(answer.rawPayload).toString();
    expect(page.match(/<script[^>]*>/g)).toEqual([
      `<script src="${assetAddress(firstScript)}">`,
      `<script type="module" src="${assetAddress(houseModule)}">`,
    ]);
  });
});
