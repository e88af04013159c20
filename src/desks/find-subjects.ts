import { normaliseCode } from '../core/identifiers/normalise-code.js';
import { recognise, type Candidate, type HouseCodes } from '../core/identifiers/recognise.js';
import { addDays } from '../core/shift-calendar/calendar-day.js';
import { findDelivery } from '../dispatch/deliveries.js';
import { findBag } from '../drying/bulk-bags.js';
import { isId } from '../platform/is-id.js';
import type { LotRow } from '../packing/packing-run-rows.js';
import { filmLotOf, findFilmLots, findLots, findRun, lotOf, rangesOfLot } from '../packing/packing-runs.js';
import { findPallet } from '../pallets/pallet-list.js';
import { shiftAt } from '../plant/plant-facts.js';
import type { Instant } from '../platform/clock.js';
import { shifted } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { NotFound } from '../platform/refusal.js';
import type { ThreadSubject } from '../tracing/thread.js';

/** One thing that the typed code may mean; `about` helps a person to choose where there are several. */
export interface Finding {
  readonly subject: ThreadSubject;
  readonly about: string;
}

/** How far back a code with a one-figure year is looked for. */
const yearsBack = 12;

/** A code that comes back after so long is another lot, whatever is printed. */
const sameLotWithinMilliseconds = 180 * 86_400_000;

/**
 * What a scanned or typed code means here: it asks each room's finder, most likely kind first. Several findings are
 * for a person to choose from.
 *
 * @param localTime the time of day on the pack, where it was given apart from the code
 */
export async function findSubjects(
  from: ReadFrom,
  siteId: string,
  asked: { readonly code: string; readonly localTime: string | null; readonly now: Instant },
): Promise<readonly Finding[]> {
  for (const candidate of recognise(asked.code, await houseCodes(from, siteId, asked.now))) {
    const found = await findingsOf(from, siteId, candidate, asked.localTime);
    if (found.length > 0) return found;
  }
  return [];
}

async function houseCodes(from: ReadFrom, siteId: string, now: Instant): Promise<HouseCodes> {
  const patterns = await from.sql<{ formatId: string; pattern: string }>`
    SELECT "id" AS "formatId", "code_pattern" AS "pattern" FROM "pack_format" WHERE "site_id" = ${siteId} ORDER BY "id"`;
  const { productionOn } = await shiftAt(from, siteId, now);
  const currentYear = Number(productionOn.slice(0, 4));
  const window = { earliestOn: `${currentYear - yearsBack}-01-01`, latestOn: addDays(productionOn, 1) };
  return { currentYear, deliveryPrefix: 'DN', patterns, window };
}

async function findingsOf(
  from: ReadFrom,
  siteId: string,
  candidate: Candidate,
  localTime: string | null,
): Promise<readonly Finding[]> {
  switch (candidate.kind) {
    case 'logistic-unit':
      return logisticUnit(from, siteId, candidate.sscc);
    case 'trade-item':
      return candidate.lot === null ? [] : lotsOfItem(from, siteId, candidate, localTime);
    case 'delivery':
      return orNone(async () => delivery(await findDelivery(from, siteId, candidate.deliveryNumber)));
    case 'bag':
      return orNone(async () => bag(await findBag(from, siteId, candidate.bagNumber)));
    case 'pack-code':
      return packCode(from, siteId, candidate, localTime);
    case 'text':
      return plainText(from, siteId, candidate.text);
    case 'other-elements':
      return [];
  }
}

async function logisticUnit(from: ReadFrom, siteId: string, sscc: string): Promise<readonly Finding[]> {
  const pallets = await orNone(async () => pallet(await findPallet(from, siteId, sscc)));
  return pallets.length > 0 ? pallets : orNone(async () => bag(await findBag(from, siteId, sscc)));
}

async function lotsOfItem(
  from: ReadFrom,
  siteId: string,
  item: { readonly gtin14: string; readonly lot: string | null },
  localTime: string | null,
): Promise<readonly Finding[]> {
  const lots = await findLots(from, siteId, normaliseCode(item.lot ?? ''));
  return ofLots(
    from,
    lots.filter((lot) => lot.gtin === item.gtin14),
    localTime,
  );
}

/** The stored code first; then each reading by a format's pattern, which may be only the beginning of a code. */
async function packCode(
  from: ReadFrom,
  siteId: string,
  candidate: Extract<Candidate, { kind: 'pack-code' }>,
  localTime: string | null,
): Promise<readonly Finding[]> {
  const time = localTime ?? candidate.localTime;
  const exact = await findLots(from, siteId, candidate.codeKey);
  if (exact.length > 0) return ofLots(from, exact, time);
  const lots = new Map<string, { lot: LotRow; time: string | null }>();
  for (const { formatId, reading } of candidate.readings) {
    for (const lot of await findLots(from, siteId, reading.lotKey, { prefix: true })) {
      if (lot.formatId === formatId)
        lots.set(lot.id, { lot, time: localTime ?? reading.localTime ?? candidate.localTime });
    }
  }
  if (lots.size === 0) {
    for (const lot of await findLots(from, siteId, candidate.codeKey, { prefix: true }))
      lots.set(lot.id, { lot, time });
  }
  const found = await Promise.all([...lots.values()].map((one) => ofLots(from, [one.lot], one.time)));
  return found.flat();
}

/** A lot is one finding; a code that came back years later is one for each time it was used. */
async function ofLots(from: ReadFrom, lots: readonly LotRow[], localTime: string | null): Promise<readonly Finding[]> {
  const findings: Finding[] = [];
  for (const lot of lots) {
    const uses = clustered((await rangesOfLot(from, lot.id)).map((range) => range.changedAt).sort());
    for (const use of uses.length === 0 ? [null] : uses) {
      findings.push({
        subject: { kind: 'lot', id: lot.id, name: lot.code, localTime, codedBetween: uses.length > 1 ? use : null },
        about: `${lot.formatName}${use === null ? '' : `, ${use.fromAt.slice(0, 10)}`}`,
      });
    }
  }
  return findings;
}

function clustered(instants: readonly Instant[]): { fromAt: Instant; untilAt: Instant }[] {
  const clusters: { fromAt: Instant; untilAt: Instant }[] = [];
  for (const at of instants) {
    const last = clusters.at(-1);
    if (last !== undefined && at < shifted(last.untilAt, sameLotWithinMilliseconds)) last.untilAt = at;
    else clusters.push({ fromAt: at, untilAt: at });
  }
  return clusters;
}

async function plainText(from: ReadFrom, siteId: string, text: string): Promise<readonly Finding[]> {
  const films = await findFilmLots(from, siteId, text);
  const rolls = films.map((film) => finding('film-lot', film.id, film.code, film.supplierCode));
  const runs = await orNone(async () => {
    const run = await findRun(from, siteId, text);
    return finding('packing-run', run.id, run.number, run.formatName);
  });
  const deliveries = await orNone(async () => delivery(await findDelivery(from, siteId, text)));
  const bags = await orNone(async () => bag(await findBag(from, siteId, text)));
  return [...rolls, ...runs, ...deliveries, ...bags, ...(isId(text) ? await byId(from, siteId, text) : [])];
}

/** Pages that know a thing only by its id lead here too. */
async function byId(from: ReadFrom, siteId: string, id: string): Promise<readonly Finding[]> {
  const pallets = await orNone(async () => pallet(await findPallet(from, siteId, id)));
  const lots = await orNone(async () => {
    const lot = await lotOf(from, id.trim().toLowerCase());
    return finding('lot', lot.id, lot.code, lot.formatName);
  });
  const films = await orNone(async () => {
    const film = await filmLotOf(from, id.trim().toLowerCase());
    return finding('film-lot', film.id, film.code, film.supplierCode);
  });
  return [...pallets, ...lots, ...films];
}

function finding(kind: ThreadSubject['kind'], id: string, name: string, about: string): Finding {
  return { subject: { kind, id, name, localTime: null, codedBetween: null }, about };
}

const pallet = (row: { id: string; sscc: string; formatName: string }): Finding =>
  finding('pallet', row.id, row.sscc, row.formatName);

const bag = (row: { id: string; number: string }): Finding => finding('bulk-bag', row.id, row.number, '');

const delivery = (row: { id: string; noteNumber: string | null; orderNumber: string }): Finding =>
  finding('delivery', row.id, row.noteNumber ?? row.orderNumber, row.orderNumber);

/** A finder that does not know it says so; here that only means: not this kind. */
async function orNone(find: () => Promise<Finding>): Promise<readonly Finding[]> {
  try {
    return [await find()];
  } catch (error) {
    if (error instanceof NotFound) return [];
    throw error;
  }
}
