import { allOn, onShelf } from './store.js';
import { csrfToken, whoIsHere } from './who-is-here.js';

/** What lets this device send a person's entries when that person has gone. */
interface Proof {
  readonly personId: string;
  readonly deviceId: string;
  readonly token: string;
  readonly endsAt: string;
  /** By the device's own clock. */
  readonly gotAt: string;
}

const renewAfterMilliseconds = 2 * 3_600_000;

/** The proof of the person who is here, if one was issued in this session. */
export async function proofOf(personId: string): Promise<string | null> {
  const found = (await allOn<Proof>('proofs')).find((proof) => proof.personId === personId);
  return found?.token ?? null;
}

/** Asks for a proof on an enrolled device, once a session and now and then again. Without network it stays as it is. */
export async function askForProof(): Promise<void> {
  const here = whoIsHere();
  if (here?.deviceId === null || here === null) return;
  const known = (await allOn<Proof>('proofs')).find(({ personId }) => personId === here.personId);
  const isFresh = known !== undefined && Date.now() - Date.parse(known.gotAt) < renewAfterMilliseconds;
  if (isFresh && known.deviceId === here.deviceId) return;
  try {
    const headers = { 'x-csrf-token': csrfToken(), 'Idempotency-Key': crypto.randomUUID(), Accept: 'application/json' };
    const answer = await fetch('/api/queue-proofs', { method: 'POST', headers });
    if (!answer.ok) return;
    const { token, personId, deviceId, endsAt } = (await answer.json()) as Omit<Proof, 'gotAt'>;
    const proof: Proof = { token, personId, deviceId, endsAt, gotAt: new Date().toISOString() };
    await onShelf('proofs', 'readwrite', (store) => store.put(proof));
  } catch {
    // Off line: entries made now carry the proof of before, or wait for their person.
  }
}

/** Somebody signs in or out: what was issued in the session so far proves nothing that happens from now on. */
export async function forgetProofs(): Promise<void> {
  await onShelf('proofs', 'readwrite', (store) => store.clear());
}
