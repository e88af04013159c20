import type { Place } from './house.js';
import type { RunningServer } from './server.js';

/** Somebody who is signed in at a server in a process of its own. */
export interface ServerSession {
  readonly cookie: string;
  readonly csrf: string;
  post(address: string, path: string, body: object, key?: string): Promise<Response>;
}

/** The settings under which a server runs on a test's database. */
export function settingsOf({
  dataFolder,
  databaseUrl,
}: Pick<Place, 'dataFolder' | 'databaseUrl'>): Record<string, string> {
  return { DATA_FOLDER: dataFolder, ...(databaseUrl === null ? {} : { DATABASE_URL: databaseUrl }) };
}

/** The administrator signs in with the one-time password that the first start printed, and chooses another. */
export async function signInFirst(server: RunningServer): Promise<ServerSession> {
  const [, code, password] = /Sign in as “([\w-]+)” with the one-time password ([\w-]+)/.exec(server.output()) ?? [];
  if (code === undefined || password === undefined) throw new Error(`no password in: ${server.output()}`);
  const begun = await signInAs(server.address, { code, password });
  const passwords = { oldPassword: password, newPassword: 'nine quiet lanterns' };
  return sessionOf(await post(server.address, begun, '/api/sessions/me/password', passwords));
}

/** Somebody signs in with code and password. */
export async function signInAs(
  address: string,
  { code, password }: { readonly code: string; readonly password: string },
): Promise<ServerSession> {
  return sessionOf(await post(address, null, '/api/sessions', { proof: 'password', code, password }));
}

async function sessionOf(answer: Response): Promise<ServerSession> {
  if (answer.status !== 201) throw new Error(`signing in failed: ${await answer.text()}`);
  const cookie = answer.headers
    .getSetCookie()
    .map((one) => one.split(';')[0] ?? '')
    .join('; ');
  const { csrfToken } = (await answer.json()) as { csrfToken: string };
  const session = { cookie, csrf: csrfToken };
  return { ...session, post: (address, path, body, key) => post(address, session, path, body, key) };
}

let keys = 0;

function post(
  address: string,
  session: { readonly cookie: string; readonly csrf: string } | null,
  path: string,
  body: object,
  key?: string,
): Promise<Response> {
  keys += 1;
  return fetch(address + path, {
    method: 'POST',
    headers: {
      'Content-Type': 'application/json',
      'Idempotency-Key': key ?? `first-${process.pid}-${keys}`,
      ...(session === null ? {} : { Cookie: session.cookie, 'X-CSRF-Token': session.csrf }),
    },
    body: JSON.stringify(body),
  });
}
