import type { WeighedMinute } from '../../core/average-quantity/weighed-mean-net.js';
import { addWrittenMinutes, minutesInHour, noMinutes } from '../../core/weight-blocks/minute-sums.js';
import type { ReadFrom } from '../../platform/database/reading.js';

/** What a weigher is, as far as its weights are to be trusted. */
interface WeigherOfMinutes {
  readonly id: string;
  readonly maximumPermissibleErrorMilligrams: number;
}

/** The accepted packs of a run by the minute. */
export interface RunMinutes {
  /** By ascending minute since 1970 UTC. */
  readonly minutes: readonly WeighedMinute[];
  /** The one that weighed most of them. */
  readonly weigher: WeigherOfMinutes;
}

interface HourRow {
  readonly runId: string;
  readonly weigherId: string;
  readonly maximumPermissibleErrorMilligrams: number;
  readonly hourAt: string;
  readonly acceptedMinutes: Uint8Array;
}

const hourMilliseconds = 3_600_000;

/**
 * The accepted packs of some runs by the minute, with tare corrections; runs without weights are left out, and hours that
 * were summed up before minutes were kept.
 *
 * Where two weighers weighed in one minute, the one with more packs counts and the other does not: they may stand one
 * behind the other and have weighed the same packs, which nobody can tell from the weights. Where one took over from the
 * other, each counts for its minutes.
 */
export async function weighedMinutesOf(
  from: ReadFrom,
  runIds: readonly string[],
): Promise<ReadonlyMap<string, RunMinutes>> {
  const rows = await from.sql<HourRow>`
    SELECT h."run_id" AS "runId", h."weigher_id" AS "weigherId", h."hour_at" AS "hourAt",
      w."maximum_permissible_error_milligrams" AS "maximumPermissibleErrorMilligrams",
      h."accepted_minutes" AS "acceptedMinutes"
    FROM "weight_hour" h JOIN "pack_weigher" w ON w."id" = h."weigher_id"
    WHERE h."run_id" IN (${() => [...runIds]}) AND h."accepted_minutes" IS NOT NULL`;
  const found = new Map<string, Map<number, MinuteOfWeigher>>();
  for (const row of rows) {
    const minutes = found.get(row.runId) ?? new Map<number, MinuteOfWeigher>();
    found.set(row.runId, minutes);
    for (const minute of minutesOf(row)) {
      const other = minutes.get(minute.minute);
      if (other === undefined || isBefore(minute, other)) minutes.set(minute.minute, minute);
    }
  }
  return new Map(
    [...found].flatMap(([runId, byMinute]): [string, RunMinutes][] => {
      const minutes = [...byMinute.values()].sort((one, other) => one.minute - other.minute);
      const weigher = mostOf(minutes);
      return weigher === null ? [] : [[runId, { minutes, weigher }]];
    }),
  );
}

interface MinuteOfWeigher extends WeighedMinute {
  readonly weigherId: string;
}

function minutesOf(row: HourRow): MinuteOfWeigher[] {
  const { packCounts, errorSumsMilligrams } = addWrittenMinutes(noMinutes(), row.acceptedMinutes);
  const first = (Date.parse(row.hourAt) / hourMilliseconds) * minutesInHour;
  const { weigherId, maximumPermissibleErrorMilligrams: weigherErrorMilligrams } = row;
  const found: MinuteOfWeigher[] = [];
  packCounts.forEach((packCount, place) => {
    const errorSumMilligrams = errorSumsMilligrams[place] ?? 0;
    if (packCount === 0) return;
    found.push({ minute: first + place, packCount, errorSumMilligrams, weigherErrorMilligrams, weigherId });
  });
  return found;
}

/** More packs; of as many, that of the weigher that is first by its id, so that rows in another order change nothing. */
function isBefore(one: MinuteOfWeigher, other: MinuteOfWeigher): boolean {
  return one.packCount > other.packCount || (one.packCount === other.packCount && one.weigherId < other.weigherId);
}

function mostOf(minutes: readonly MinuteOfWeigher[]): WeigherOfMinutes | null {
  const weighed = new Map<string, number>();
  for (const { weigherId, packCount } of minutes) weighed.set(weigherId, (weighed.get(weigherId) ?? 0) + packCount);
  const [most] = [...weighed].sort(([one, packs], [other, others]) => others - packs || (one < other ? -1 : 1));
  const minute = minutes.find(({ weigherId }) => weigherId === most?.[0]);
  if (minute === undefined) return null;
  return { id: minute.weigherId, maximumPermissibleErrorMilligrams: minute.weigherErrorMilligrams };
}
