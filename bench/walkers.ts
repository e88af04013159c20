import { demoPeople } from '../src/demo/set-up/demo-people.js';
import type { Walker } from './crawl-pages.js';

/** The demo's people , one of each role, signed in. */
export async function signInWalkers(address: string): Promise<Walker[]> {
  const walkers: Walker[] = [];
  for (const { role, code, password } of demoPeople) {
    if (walkers.some((walker) => walker.role === role)) continue;
    walkers.push({ role, cookie: await signedIn(address, code, password) });
  }
  return walkers;
}

/** @throws {Error} when somebody of the demo is not let in */
async function signedIn(address: string, code: string, password: string): Promise<string> {
  const answer = await fetch(`${address}/api/sessions`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ proof: 'password', code, password }),
  });
  const cookie = /packthread-session=[^;]+/.exec(answer.headers.get('set-cookie') ?? '')?.[0];
  if (!answer.ok || cookie === undefined) throw new Error(`${code} was not let in: ${answer.status}`);
  return cookie;
}
