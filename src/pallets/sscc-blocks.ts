import { takeSscc } from '../drying/take-sscc.js';
import type { Asked } from '../journal/entry-draft.js';
import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Refusal } from '../platform/refusal.js';
import { SsccBlock } from './sscc-block.entity.js';
import { SsccSetAside } from './sscc-set-aside.entity.js';

/** For whom numbers are set aside: a device, or a sheet of a paper form. */
export interface BlockDraft {
  readonly nextId: () => string;
  readonly siteId: string;
  readonly deviceId: string | null;
  readonly sheet: string | null;
  readonly numberCount: number;
  readonly at: Instant;
}

/** Takes the next numbers of the site's series out of it. Answers the block with them. */
export async function setAside(
  tx: Tx,
  draft: BlockDraft,
): Promise<{ readonly id: string; readonly ssccs: readonly string[] }> {
  const { siteId, deviceId, sheet, numberCount, at: setAsideAt } = draft;
  const id = draft.nextId();
  await tx.insert(SsccBlock, { id, siteId, deviceId, sheet, setAsideAt });
  const ssccs: string[] = [];
  for (let place = 0; place < numberCount; place += 1) ssccs.push(await takeSscc(tx, siteId));
  await tx.insert(
    SsccSetAside,
    ssccs.map((sscc) => ({ sscc, blockId: id })),
  );
  return { id, ssccs };
}

/**
 * The number that a pallet bears already, which was set aside for the device that asks or for the sheet that it was
 * written on; null where it bears none.
 *
 * @throws {Refusal} `sscc-not-set-aside`, `sscc-of-another`, `sscc-used-already`
 */
export async function ownSetAside(from: ReadFrom, asked: Asked, stated: string | null): Promise<string | null> {
  if (stated === null) return null;
  const sscc = stated.slice(-18);
  const { siteId, deviceId } = asked.actor;
  const [row] = await from.sql<{ deviceId: string | null; sheet: string | null; palletId: string | null }>`
    SELECT b."device_id" AS "deviceId", b."sheet" AS "sheet", p."id" AS "palletId"
    FROM "sscc_set_aside" s JOIN "sscc_block" b ON b."id" = s."block_id" AND b."site_id" = ${siteId}
    LEFT JOIN "pallet" p ON p."sscc" = s."sscc"
    WHERE s."sscc" = ${sscc}`;
  if (row === undefined) throw new Refusal('sscc-not-set-aside', { sscc });
  if (row.palletId !== null) throw new Refusal('sscc-used-already', { sscc });
  const isOfDevice = row.deviceId !== null && row.deviceId === deviceId;
  const isOfSheet = row.sheet !== null && row.sheet === asked.happening?.sheet;
  if (!isOfDevice && !isOfSheet) throw new Refusal('sscc-of-another', { sscc });
  return sscc;
}

/** The numbers set aside for a device that no pallet bears yet, oldest first. */
export async function unusedOfDevice(from: ReadFrom, siteId: string, deviceId: string): Promise<readonly string[]> {
  const rows = await from.sql<{ sscc: string }>`
    SELECT s."sscc" FROM "sscc_set_aside" s JOIN "sscc_block" b ON b."id" = s."block_id"
    WHERE b."device_id" = ${deviceId} AND b."site_id" = ${siteId}
      AND NOT EXISTS (SELECT 1 FROM "pallet" p WHERE p."sscc" = s."sscc")
    ORDER BY s."sscc" LIMIT 200`;
  return rows.map(({ sscc }) => sscc);
}
