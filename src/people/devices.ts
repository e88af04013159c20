import type { Page } from '../platform/web/listed.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { Device } from './device.entity.js';

/** A device as lists show it. */
export interface DeviceRow {
  readonly id: string;
  readonly code: string;
  readonly kind: Device['kind'];
  /** When its token was given; null when it has none, so that it is not known any more. */
  readonly tokenSetAt: string | null;
}

const afterAllIds = 'g';

/** The devices of a site, newest first, those before an id; at most 200. */
export async function devicesOf(from: ReadFrom, siteId: string, page: Page): Promise<readonly DeviceRow[]> {
  return from.sql<DeviceRow>`
    SELECT d."id" AS "id", d."code" AS "code", d."kind" AS "kind", t."set_at" AS "tokenSetAt"
    FROM "device" d LEFT JOIN "device_token" t ON t."device_id" = d."id"
    WHERE d."site_id" = ${siteId} AND d."id" < ${page.before ?? afterAllIds}
    ORDER BY d."id" DESC LIMIT ${page.limit}`;
}
