import { hash, verify } from '@node-rs/argon2';

/** argon2id at 19 MiB, two passes, one lane (the first of the equal choices of the OWASP password storage sheet). */
const cost = { memoryCost: 19_456, timeCost: 2, parallelism: 1 } as const;

/** How many hashes are computed at a time: more would only take memory and the cores from the plant's work. */
const most = 2;

/** Fits no password. Who is not known here is checked against it, so that the answer takes as long as for anyone. */
const hashOfNobody =
  '$argon2id$v=19$m=19456,t=2,p=1$exfIaspHkvR5Ja/gHSQTyw$VEWSEKIPWWrS+umMSBqe66lry29/iDhpggGdN638JzQ';

let running = 0;
const queue: (() => void)[] = [];

/** The argon2id hash of a password or PIN. */
export function hashSecret(secret: string): Promise<string> {
  return inTurn(() => hash(normal(secret), cost));
}

/** Whether the secret fits the hash. A `null` hash fits nothing, and takes as long to say so. */
export function fitsSecret(secretHash: string | null, secret: string): Promise<boolean> {
  return inTurn(async () => {
    const fits = await verify(secretHash ?? hashOfNobody, normal(secret));
    return fits && secretHash !== null;
  });
}

/** Two keyboards may compose one letter differently. */
function normal(secret: string): string {
  return secret.normalize('NFKC');
}

async function inTurn<Answer>(work: () => Promise<Answer>): Promise<Answer> {
  if (running >= most) await new Promise<void>((resolve) => queue.push(resolve));
  else running += 1;
  try {
    return await work();
  } finally {
    const next = queue.shift();
    if (next === undefined) running -= 1;
    else next();
  }
}
