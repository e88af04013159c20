import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { localText } from '../platform/web/local-text.js';
import { timeZone } from './life/minutes.js';
import { demoBadgeOf, demoPeople } from './set-up/demo-people.js';
import type { DemoDevice } from './set-up/demo-device.js';
import type { DemoTruth } from './truth.js';

/** What there is to type into the search box: real ones of this demo. */
export interface ShownCodes {
  readonly packCode: string;
  readonly bagNumber: string;
  readonly sscc: string;
  /** The run whose packs were weighed last. */
  readonly weighedRunId: string;
}

/** A pack of about the middle of the demo, the bag that most of it came from, and the pallet it went onto. */
export async function codesToShow(from: ReadFrom, truth: DemoTruth): Promise<ShownCodes> {
  const probes = truth.cells.filter(({ printed }) => printed !== null);
  const probe = probes[Math.floor(probes.length / 2)];
  if (probe?.printed == null) throw new RangeError('The demo has no packs to show');
  const [bagId] = Object.entries(probe.grams).sort(([, one], [, other]) => other - one)[0] ?? [];
  const [bag] = await from.sql<{ number: string }>`SELECT "number" FROM "bulk_bag" WHERE "id" = ${bagId ?? ''}`;
  const [pallet] = await from.sql<{ sscc: string }>`
    SELECT p."sscc" FROM "pallet" p JOIN "pallet_content" c ON c."pallet_id" = p."id" AND c."voided_by" IS NULL
    WHERE c."run_id" = ${probe.runId} AND c."from_count" <= ${probe.fromCount} AND c."to_count" > ${probe.fromCount}
    ORDER BY p."id" LIMIT 1`;
  const [weighed] = await from.sql<{ runId: string }>`
    SELECT "run_id" AS "runId" FROM "weight_run" ORDER BY "last_at" DESC, "run_id" LIMIT 1`;
  return {
    packCode: probe.printed,
    bagNumber: bag?.number ?? '',
    sscc: pallet?.sscc ?? '',
    weighedRunId: weighed?.runId ?? '',
  };
}

/** What is printed when the plant is served. */
export function welcomeText(
  address: string,
  codes: ShownCodes,
  devices: readonly Pick<DemoDevice, 'code'>[],
  now: Instant,
): string {
  const signIns = demoPeople.map(
    ({ code, password, role, language }) =>
      `  ${code.padEnd(8)} ${password.padEnd(20)} ${role}${language === 'es' ? ', in Spanish' : ''}`,
  );
  return `
Alder Quay is open. All of it is invented: people, customers and sugar.
Its clock goes on from where its records end: ${localText(now, timeZone)}.

Open
  ${address}/
  ${address}/thread?code=${encodeURIComponent(codes.packCode)}
  ${address}/accounts
  ${address}/runs/${codes.weighedRunId}/weights

Type into the search box
  ${codes.packCode.padEnd(22)} printed on a pack
  ${codes.bagNumber.padEnd(22)} a bulk bag
  ${codes.sscc.padEnd(22)} a pallet

Sign in with
${signIns.join('\n')}

${floorText(address, devices)}

Stop with Ctrl-C; the next start goes on from here.
`;
}

/** How a browser becomes a tablet, and what people sign in with on it. */
function floorText(address: string, devices: readonly Pick<DemoDevice, 'code'>[]): string {
  if (devices.length === 0) return 'This demo was made before it had tablets and badges: --fresh makes it anew.';
  const badges = demoPeople.flatMap((person) =>
    person.pin === null ? [] : [`  ${person.code.padEnd(8)} ${person.pin}  ${demoBadgeOf(person)}`],
  );
  return `Make a browser a shared tablet or handheld: ${devices.map(({ code }) => code).join(', ')}
  ${address}/demo

On it, sign in with the badge (paste it), or with name and PIN; quality lifts a hold with both
${badges.join('\n')}`;
}
