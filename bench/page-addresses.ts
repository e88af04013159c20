import type { INestApplicationContext } from '@nestjs/common';
import { READER, type ReadFrom } from '../src/platform/database/reading.js';
import { pageRoutesOf, type PageRoute } from '../src/platform/web/page-routes.js';

/** The tables whose ids stand in addresses, by the name of the parameter and the beginning of the path. */
const idsOf: readonly (readonly [RegExp, string, string])[] = [
  [/^\/line\//, ':lineId', `SELECT "id" FROM "packing_line" ORDER BY "id"`],
  [/\/off\//, ':tipId', `SELECT "id" FROM "tip" ORDER BY "id" DESC`],
  [/\/stops\//, ':stopId', `SELECT "id" FROM "line_stop" ORDER BY "id" DESC`],
  [/\/pallets\//, ':palletId', `SELECT "id" FROM "pallet" ORDER BY "id" DESC`],
  [/\/handovers\//, ':handoverId', `SELECT "id" FROM "handover" ORDER BY "id" DESC`],
  [/plans|checks/, ':planId', `SELECT "id" FROM "check_plan" ORDER BY "id" DESC`],
  [/^\/(dispatch|dock)\//, ':deliveryId', `SELECT "id" FROM "delivery" ORDER BY "id" DESC`],
  [/^\/set-up\/people\//, ':id', `SELECT "id" FROM "person" ORDER BY "id" DESC`],
];

/** Pages that a choice made before leads to: their whole addresses. */
const chosen: Readonly<Record<string, string>> = {
  '/quality/lots': `SELECT '/quality/lots?code=' || SUBSTR("code", 1, 2) AS "id" FROM "lot"`,
  '/set-up/checks/new': `SELECT '/set-up/checks/new?kind=seal&line=' || "id" AS "id" FROM "packing_line"`,
  '/dispatch/:deliveryId/unload': unloading('dispatch'),
  '/dock/:deliveryId/unload': unloading('dock'),
};

function unloading(desk: string): string {
  return `SELECT '/${desk}/' || "delivery_id" || '/unload?unit=' || "pallet_id" AS "id" FROM "loading"
    WHERE "pallet_id" IS NOT NULL ORDER BY "loading"."id" DESC`;
}

/** How many ids of a kind are tried: a delivery that is being loaded has other pages than one that has left. */
const triedCount = 12;

/**
 * Addresses of a kind of page that no link was met to: a form leads there, or a scan. Every combination of the newest
 * ids, as many as it may take until one is in the state that the page is for.
 */
async function addressesOf(from: ReadFrom, pattern: string): Promise<readonly string[]> {
  const whole = chosen[pattern];
  if (whole !== undefined) {
    const rows = await from.sql<{ id: string }>`${() => whole} LIMIT ${triedCount}`;
    return rows.map(({ id }) => id);
  }
  let addresses: readonly string[] = [pattern];
  for (const [fits, parameter, statement] of idsOf) {
    if (!fits.test(pattern) || !pattern.includes(parameter)) continue;
    const rows = await from.sql<{ id: string }>`${() => statement} LIMIT ${triedCount}`;
    addresses = addresses.flatMap((address) => rows.map(({ id }) => address.replace(parameter, id)));
  }
  return addresses.filter((address) => !address.includes(':')).slice(0, triedCount * 4);
}

/** Files, streams, redirections (a plan's check and a weigher's silence lead on) and checks of the server's health are no pages. */
const noPage =
  /^\/(assets|events|healthz|readyz|service-worker\.js|home|change-password|papers\/:id\/|checks\/plans\/|weigher-silences\/)/;

/** How a house that listens is walked through. */
export function crawlOf(
  house: INestApplicationContext,
  address: string,
): {
  readonly address: string;
  readonly routes: readonly PageRoute[];
  readonly addressesOf: (pattern: string) => Promise<readonly string[]>;
} {
  const from = house.get<ReadFrom>(READER, { strict: false });
  return {
    address,
    routes: pageRoutesOf(house).filter(({ path }) => !noPage.test(path)),
    addressesOf: (pattern) => addressesOf(from, pattern),
  };
}
