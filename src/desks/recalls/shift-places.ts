import type { ReadFrom } from '../../platform/database/reading.js';
import { linesOf } from '../line-checks/lines-and-formats.js';
import type { ShiftPlace } from './recall-choose.page.js';

/** The lines and dryers whose shifts a recall can be of. */
export async function shiftPlaces(from: ReadFrom, siteId: string): Promise<readonly ShiftPlace[]> {
  const dryers = await from.sql<{ id: string; code: string }>`
    SELECT "id", "code" FROM "dryer" WHERE "site_id" = ${siteId} ORDER BY "code"`;
  const place = (
    kind: ShiftPlace['kind'],
    { id, code }: { readonly id: string; readonly code: string },
  ): ShiftPlace => ({
    key: `${kind}:${id}`,
    kind,
    name: code,
  });
  return [
    ...(await linesOf(from, siteId)).map((line) => place('packing-shift', line)),
    ...dryers.map((dryer) => place('dryer-shift', dryer)),
  ];
}
