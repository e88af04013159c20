import type { Instant } from '../platform/clock.js';
import { toBoolean, toWhole } from '../platform/database/stored-values.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { NotFound } from '../platform/refusal.js';

/** A pack weigher that is set up, with what it sent so far. */
export interface PackWeigherRow {
  readonly id: string;
  readonly siteId: string;
  readonly deviceId: string;
  readonly deviceCode: string;
  readonly lineId: string;
  readonly lineCode: string;
  readonly code: string;
  readonly stepMilligrams: number;
  readonly maximumPermissibleErrorMilligrams: number;
  readonly headCount: number | null;
  readonly countsPacks: boolean;
  readonly rejectsPacks: boolean;
  /** Whether weights may come from it by MQTT. */
  readonly takesMqtt: boolean;
  readonly weightCount: number;
  readonly lastReceivedAt: Instant | null;
}

/** The pack weighers of a site, by code. */
export async function packWeighersOf(from: ReadFrom, siteId: string): Promise<PackWeigherRow[]> {
  const rows = await from.sql<PackWeigherRow>`
    SELECT ${columns} WHERE w."site_id" = ${siteId} AND w."voided_by" IS NULL ORDER BY w."code"`;
  return rows.map(plain);
}

/** The pack weigher that a machine is; null: it is none. */
export async function packWeigherOfDevice(from: ReadFrom, deviceId: string): Promise<PackWeigherRow | null> {
  const [row] = await from.sql<PackWeigherRow>`
    SELECT ${columns} WHERE w."device_id" = ${deviceId} AND w."voided_by" IS NULL`;
  return row === undefined ? null : plain(row);
}

/** Pack weighers by their ids, those too that were withdrawn since. */
export async function packWeighersNamed(from: ReadFrom, ids: readonly string[]): Promise<PackWeigherRow[]> {
  if (ids.length === 0) return [];
  const rows = await from.sql<PackWeigherRow>`
    SELECT ${columns} WHERE w."id" IN (${() => [...ids]}) ORDER BY w."code"`;
  return rows.map(plain);
}

/** One pack weigher. @throws {NotFound} for one that was taken off its line, and of another site */
export async function packWeigherOf(from: ReadFrom, siteId: string, weigherId: string): Promise<PackWeigherRow> {
  const [row] = await from.sql<PackWeigherRow>`
    SELECT ${columns} WHERE w."id" = ${weigherId} AND w."site_id" = ${siteId} AND w."voided_by" IS NULL`;
  if (row === undefined) throw new NotFound('pack-weigher', weigherId);
  return plain(row);
}

/** The pack weigher that is called so; null: none is, or two of different sites are. */
export async function packWeigherCalled(from: ReadFrom, code: string): Promise<PackWeigherRow | null> {
  const [row, other] = await from.sql<PackWeigherRow>`
    SELECT ${columns} WHERE w."code" = ${code} AND w."voided_by" IS NULL LIMIT 2`;
  return row === undefined || other !== undefined ? null : plain(row);
}

const columns = (): string => `
  w."id", w."site_id" AS "siteId", w."device_id" AS "deviceId", d."code" AS "deviceCode", w."line_id" AS "lineId",
  l."code" AS "lineCode", w."code", w."step_milligrams" AS "stepMilligrams",
  w."maximum_permissible_error_milligrams" AS "maximumPermissibleErrorMilligrams", w."head_count" AS "headCount",
  w."counts_packs" AS "countsPacks", w."rejects_packs" AS "rejectsPacks",
  (SELECT y."takes_mqtt" FROM "weigher_way" y WHERE y."weigher_id" = w."id"
    ORDER BY y."set_at" DESC, y."id" DESC LIMIT 1) AS "takesMqtt",
  (SELECT COALESCE(SUM(s."weight_count"), 0) FROM "weight_series" s WHERE s."device_id" = w."device_id") AS "weightCount",
  (SELECT MAX(s."last_received_at") FROM "weight_series" s WHERE s."device_id" = w."device_id") AS "lastReceivedAt"
  FROM "pack_weigher" w
  JOIN "device" d ON d."id" = w."device_id"
  JOIN "packing_line" l ON l."id" = w."line_id"`;

function plain(row: PackWeigherRow): PackWeigherRow {
  return {
    ...row,
    countsPacks: toBoolean(row.countsPacks),
    rejectsPacks: toBoolean(row.rejectsPacks),
    takesMqtt: toBoolean(row.takesMqtt),
    weightCount: toWhole(row.weightCount),
  };
}
