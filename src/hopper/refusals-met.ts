import { Injectable } from '@nestjs/common';
import { Clock, shifted } from '../platform/clock.js';
import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { UnitOfWork } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { RefusalMet } from './refusal-met.entity.js';

/** So long after a refusal somebody may still say that the bag is in all the same. Our own value, no source. */
export const alreadyInMinutes = 30;

/** Rows are of no use later. */
const keptHours = 24;

/** A refusal that a person met at a hopper with a bag. */
export interface MetRefusal {
  readonly siteId: string;
  readonly personId: string;
  readonly hopperId: string;
  readonly bagId: string;
  readonly code: string;
}

/** Remembers refusals to tip a bag. They are no facts of production: no journal, and rows go after a day. */
@Injectable()
export class RefusalsMet {
  constructor(
    private readonly units: UnitOfWork,
    private readonly ids: Ids,
    private readonly clock: Clock,
  ) {}

  /** One row a person, hopper and bag: meeting a refusal again only makes it later. */
  async remember(met: MetRefusal): Promise<void> {
    const metAt = this.clock.now();
    await this.units.run(async (tx) => {
      await tx.sql`DELETE FROM "refusal_met" WHERE "met_at" < ${shifted(metAt, -keptHours * 3_600_000)}`;
      const { personId, hopperId, bagId } = met;
      await tx.remove(RefusalMet, { personId, hopperId, bagId });
      await tx.insert(RefusalMet, { id: this.ids.next(), ...met, metAt });
    });
  }
}

/** The last refusal that a person met with a bag at a hopper, not longer ago than is allowed; null: none. */
export async function refusalMetBy(
  from: ReadFrom,
  met: Omit<MetRefusal, 'siteId' | 'code'> & { readonly now: Instant },
): Promise<{ readonly code: string; readonly metAt: Instant } | null> {
  const [row] = await from.sql<{ code: string; metAt: Instant }>`
    SELECT "code", "met_at" AS "metAt" FROM "refusal_met"
    WHERE "bag_id" = ${met.bagId} AND "hopper_id" = ${met.hopperId} AND "person_id" = ${met.personId}
      AND "met_at" >= ${shifted(met.now, -alreadyInMinutes * 60_000)} ORDER BY "met_at" DESC LIMIT 1`;
  return row ?? null;
}
