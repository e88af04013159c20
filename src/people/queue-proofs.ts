import { Inject, Injectable } from '@nestjs/common';
import { roles, type Actor, type Role } from '../platform/actor.js';
import { sha256 } from '../platform/canonical-text.js';
import { Clock, shifted, type Instant } from '../platform/clock.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { UnitOfWork } from '../platform/database/unit-of-work.js';
import { Refusal } from '../platform/refusal.js';
import { languages, type Language } from '../platform/sentences/language.js';
import { QueueProof } from './queue-proof.entity.js';
import { newToken } from './secrets.js';
import { Session } from './session.entity.js';

/** How long a device may wait to send what it keeps: no network of a plant is down for two weeks (our own value). */
const daysGood = 14;

/** What a device is given once; it keeps the token beside what waits. */
export interface IssuedProof {
  readonly token: string;
  readonly personId: string;
  readonly deviceId: string;
  readonly issuedAt: Instant;
  readonly endsAt: Instant;
}

/**
 * Proofs for what waits on a shared device. One is issued to the person who is signed in, for that device; it sends
 * entries as that person's and does nothing else. Like sessions they are no facts: no journal.
 */
@Injectable()
export class QueueProofs {
  constructor(
    private readonly units: UnitOfWork,
    private readonly clock: Clock,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  /** @throws {Refusal} `queue-needs-shared-device` anywhere but on an enrolled tablet or handheld */
  async issue({ siteId, personId, deviceId }: Actor, sessionHash: string | undefined): Promise<IssuedProof> {
    if (personId === null || deviceId === null || sessionHash === undefined || !(await this.isShared(deviceId))) {
      throw new Refusal('queue-needs-shared-device');
    }
    const token = newToken();
    const issuedAt = this.clock.now();
    const endsAt = shifted(issuedAt, daysGood * 86_400_000);
    await this.units.run(async (tx) => {
      await tx.sql`DELETE FROM "queue_proof" WHERE "ends_at" <= ${issuedAt}`;
      const session = await tx.findOne(Session, { tokenHash: sessionHash });
      const proof = { tokenHash: sha256(token), siteId, personId, deviceId, sessionHash, issuedAt, endsAt };
      await tx.insert(QueueProof, { ...proof, signedOutAt: session?.endsAt ?? issuedAt });
    });
    return { token, personId, deviceId, issuedAt, endsAt };
  }

  private async isShared(deviceId: string): Promise<boolean> {
    const [device] = await this.reader.sql<{ kind: string }>`SELECT "kind" FROM "device" WHERE "id" = ${deviceId}`;
    return device?.kind === 'shared-tablet' || device?.kind === 'handheld';
  }
}

/** Somebody whose entries waited on a device. */
export interface Queueing {
  readonly siteId: string;
  readonly siteName: string;
  readonly timeZone: string;
  readonly personId: string;
  readonly name: string;
  readonly language: Language;
  readonly deviceId: string;
  readonly deviceCode: string;
  readonly issuedAt: Instant;
  readonly signedOutAt: Instant;
  /** What the person may do now; nothing where they hold no role any more. */
  readonly roles: readonly Role[];
}

interface QueueingRow extends Omit<Queueing, 'language' | 'roles'> {
  readonly language: string | null;
  readonly role: string | null;
}

/** Whose proof this is; null where it is unknown or over, or was issued to another device than the one that asks. */
export async function findQueueing(
  from: ReadFrom,
  shown: { readonly proofHash: string; readonly deviceTokenHash: string },
  now: Instant,
): Promise<Queueing | null> {
  const rows = await from.sql<QueueingRow>`
    SELECT q."site_id" AS "siteId", si."name" AS "siteName", si."time_zone" AS "timeZone", q."person_id" AS "personId",
      COALESCE(n."name", p."code") AS "name", n."language" AS "language", q."device_id" AS "deviceId",
      d."code" AS "deviceCode", q."issued_at" AS "issuedAt", q."signed_out_at" AS "signedOutAt", r."role" AS "role"
    FROM "queue_proof" q
    JOIN "device_token" t ON t."device_id" = q."device_id" AND t."token_hash" = ${shown.deviceTokenHash}
    JOIN "device" d ON d."id" = q."device_id"
    JOIN "site" si ON si."id" = q."site_id"
    JOIN "person" p ON p."id" = q."person_id"
    LEFT JOIN "person_name" n ON n."person_id" = p."id"
    LEFT JOIN "role_holding" r ON r."person_id" = p."id" AND r."voided_by" IS NULL
    WHERE q."token_hash" = ${shown.proofHash} AND q."ends_at" > ${now}`;
  const [first] = rows;
  if (first === undefined) return null;
  const { siteId, siteName, timeZone, personId, name, language, deviceId, deviceCode, issuedAt, signedOutAt } = first;
  return {
    ...{ siteId, siteName, timeZone, personId, name, deviceId, deviceCode, issuedAt, signedOutAt },
    language: languages.find((known) => known === language) ?? 'en',
    roles: roles.filter((role) => rows.some((row) => row.role === role)),
  };
}
