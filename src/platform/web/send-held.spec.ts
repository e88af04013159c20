import { once } from 'node:events';
import { connect, type AddressInfo } from 'node:net';
import { setTimeout as pause } from 'node:timers/promises';
import { brotliDecompressSync } from 'node:zlib';
import { afterEach, describe, expect, it } from '@jest/globals';
import fastify, { type FastifyInstance } from 'fastify';
import { packAnswers } from './answer-encoding.js';
import { sendHeld } from './send-held.js';

let server: FastifyInstance | null = null;
afterEach(async () => {
  await server?.close();
  server = null;
});

/** A server whose one route sends `text` from shared memory, and how often that was given back. */
async function serve(
  text: string,
  before = Promise.resolve(),
): Promise<{ readonly port: number; readonly givenBack: () => number }> {
  let count = 0;
  const own = (server = fastify({ forceCloseConnections: true }));
  packAnswers(own);
  own.get('/', async (_request, reply) => {
    await before;
    const bytes = Buffer.from(new SharedArrayBuffer(Buffer.byteLength(text)));
    bytes.write(text);
    const giveBack = (): void => {
      count += 1;
      // As whoever is asked next would.
      bytes.fill(0);
    };
    return reply.send(sendHeld(reply, { bytes, giveBack }));
  });
  await own.listen({ port: 0, host: '127.0.0.1' });
  return { port: (own.server.address() as AddressInfo).port, givenBack: () => count };
}

const text = JSON.stringify(Array.from({ length: 200_000 }, (_, place) => `ü${place}`));

async function until(isSo: () => boolean): Promise<void> {
  for (let tried = 0; tried < 500 && !isSo(); tried += 1) await pause(10);
  expect(isSo()).toBe(true);
}

describe('an answer sent from shared memory', () => {
  it('comes whole, plain and packed, and is given back once', async () => {
    const { port, givenBack } = await serve(text);
    const plain = await fetch(`http://127.0.0.1:${port}/`, { headers: { 'accept-encoding': 'identity' } });
    expect(plain.headers.get('content-type')).toBe('application/json; charset=utf-8');
    expect(plain.headers.get('content-length')).toBe(String(Buffer.byteLength(text)));
    expect((await plain.text()) === text).toBe(true);
    await until(() => givenBack() === 1);
    const injected = await server?.inject({ url: '/', headers: { 'accept-encoding': 'br' } });
    expect(injected?.headers['content-encoding']).toBe('br');
    expect(brotliDecompressSync(injected?.rawPayload ?? Buffer.alloc(0)).toString() === text).toBe(true);
    await until(() => givenBack() === 2);
  });

  it('stays until a slow client has taken it', async () => {
    // Far more than the system keeps of a connection.
    const long = text.repeat(20);
    const { port, givenBack } = await serve(long);
    const socket = connect(port, '127.0.0.1');
    socket.write('GET / HTTP/1.1\r\nhost: a\r\nconnection: close\r\n\r\n');
    const taken: Buffer[] = [];
    await once(socket, 'readable');
    await pause(100);
    expect(givenBack()).toBe(0);
    socket.on('data', (part: Buffer) => taken.push(part));
    await once(socket, 'close');
    const body = Buffer.concat(taken).toString();
    expect(body.slice(body.indexOf('\r\n\r\n') + 4) === long).toBe(true);
    await until(() => givenBack() === 1);
  });

  it('is given back where nobody waits any more', async () => {
    const { port, givenBack } = await serve(text.repeat(20));
    const socket = connect(port, '127.0.0.1');
    socket.write('GET / HTTP/1.1\r\nhost: a\r\n\r\n');
    await once(socket, 'readable');
    socket.destroy();
    await until(() => givenBack() === 1);
  });

  it('is given back where nobody waited any more when it was there', async () => {
    let answer = (): void => undefined;
    const before = new Promise<void>((resolve) => {
      answer = resolve;
    });
    const { port, givenBack } = await serve(text, before);
    const socket = connect(port, '127.0.0.1');
    socket.write('GET / HTTP/1.1\r\nhost: a\r\n\r\n');
    await once(server?.server ?? socket, 'request');
    socket.destroy();
    await pause(100);
    answer();
    await until(() => givenBack() === 1);
  });
});
