import type { RecallBalance } from '../core/recall-sums/recall-balance.js';
import { packsIn } from '../packing/run-ranges.js';
import { namesOf } from '../people/people.js';
import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { groupBy } from '../platform/group-by.js';
import { inPaperLanguage } from '../platform/printing/paper-language.js';
import { printedTime } from '../platform/printing/printed-figures.js';
import { customerOf, siteOf } from '../plant/plant-facts.js';
import { lineEvents } from '../tracing/line-events.js';
import { shareText } from './frozen-figures.js';
import type { RecallFigures } from './recall-figures.js';
import type { RecallLink } from './recall-links.js';
import { nameOfScope } from './recall-reach.js';
import { changesOfRecall, recordsOf } from './recall-records.js';
import { ribbonsOfRecall } from './recall-ribbons.js';
import type { PrintedBalance, RecallReportFacts } from './recall-report.facts.js';
import { scopesOf, type RecallRow } from './recalls.js';

/** What is signed, and by whom. */
export interface ReportDraft {
  readonly recall: RecallRow & { readonly stoppedAt: Instant };
  readonly figures: RecallFigures;
  readonly links: readonly RecallLink[];
  readonly explanation: string | null;
  readonly signedBy: string | null;
  readonly signedAt: Instant;
  readonly contentHash: string;
  readonly journalHead: string;
}

/** What the report of a recall says, read in the unit that signs it. */
export async function reportFacts(from: ReadFrom, draft: ReportDraft): Promise<RecallReportFacts> {
  const { recall, figures, links, explanation, contentHash, journalHead } = draft;
  const { name: siteName, timeZone } = await siteOf(from, recall.siteId);
  const local = (at: Instant): string => printedTime(at, timeZone);
  const localOrNull = (at: Instant | null): string | null => (at === null ? null : local(at));
  const names = await namesOf(
    from,
    [recall.openedBy, draft.signedBy].filter((id) => id !== null),
  );
  const events = await inPaperLanguage(() => lineEvents(from, figures.parts));
  const { drawn, leftOut } = await ribbonsOfRecall(from, figures.reach.ranges);
  const { number, kind, hazard, reason, sureness, surenessReason } = recall;
  return {
    ...{ number, kind, siteName, hazard, reason, sureness, surenessReason },
    scopes: await scopeTexts(from, recall.id, local),
    startedAtLocal: local(recall.startedAt),
    customersListedAtLocal: localOrNull(recall.customersListedAt),
    stockBlockedAtLocal: localOrNull(recall.stockBlockedAt),
    stoppedAtLocal: local(recall.stoppedAt),
    tookSeconds: Math.round((Date.parse(recall.stoppedAt) - Date.parse(recall.startedAt)) / 1000),
    packs: printed(figures.packs),
    milligrams: printed(figures.milligrams),
    hasAssumed: figures.hasAssumed,
    recoveryPercent: shareText(figures.packRates.recoveryPercent),
    closedOutPercent: shareText(figures.packRates.closedOutPercent),
    overRecall: shareText(figures.overRecall),
    respondedCount: figures.respondedCount,
    places: placesOf(figures),
    customers: await customersOf(from, figures),
    ribbons: drawn.map((ribbons) => ({ ...ribbons, startedAtLocal: local(ribbons.startedAt) })),
    ribbonsLeftOut: leftOut,
    bags: links
      .filter(({ step }) => step === 'bag-run')
      .map(({ parent, child, leastGrams, likelyGrams, mostGrams, word }) => {
        return { parent, child, leastGrams, likelyGrams, mostGrams, word };
      }),
    events: events.map(({ kind: what, says, grams, at }) => ({ kind: what, says, grams, atLocal: local(at) })),
    corrections: (await changesOfRecall(from, recall.siteId, figures)).map((entry) => ({
      ...{ sequence: entry.sequence, action: entry.action },
      ...{ occurredAtLocal: local(entry.occurredAt), recordedAtLocal: local(entry.recordedAt) },
    })),
    records: await recordsOf(from, { siteId: recall.siteId, timeZone }, { ...figures, links, packed: figures.parts }),
    explanation,
    openedBy: names.get(recall.openedBy ?? '') ?? null,
    signedBy: names.get(draft.signedBy ?? '') ?? null,
    signedAtLocal: local(draft.signedAt),
    ...{ contentHash, journalHead },
  };
}

function printed(balance: RecallBalance): PrintedBalance {
  const { produced, inStore, onDock, onVehicle, dispatched, rejects, samples, retained, scrapped } = balance;
  return {
    ...{ produced, inStore, onDock, onVehicle, dispatched, rejects, samples, retained, scrapped },
    found: balance.found,
    unaccounted: balance.unaccounted,
    accountedPercent: shareText(balance.accountedPercent),
  };
}

async function scopeTexts(
  from: ReadFrom,
  recallId: string,
  local: (at: Instant) => string,
): Promise<readonly string[]> {
  const texts: string[] = [];
  for (const scope of await scopesOf(from, recallId)) {
    const { name } = await nameOfScope(from, scope);
    const { scopeKind, fromAt, untilAt } = scope;
    const time = fromAt === null || untilAt === null ? '' : `, ${local(fromAt)} – ${local(untilAt)}`;
    texts.push(`${scopeWords[scopeKind]} ${name}${time}`);
  }
  return texts;
}

const scopeWords = {
  'bulk-bag': 'Bulk bag',
  lot: 'Lot',
  'packing-run': 'Packing run',
  'dryer-shift': 'Dryer',
  'packing-shift': 'Packing line',
} as const;

function placesOf({ units }: RecallFigures): RecallReportFacts['places'] {
  const named = units.map((unit) => ({ ...unit, name: unit.placeCode ?? unit.delivery?.noteNumber ?? null }));
  return [...groupBy(named, ({ place, name }) => `${place} ${name ?? ''}`).values()].flatMap((own) => {
    const [first] = own;
    const packCount = own.reduce((sum, { ranges }) => sum + packsIn(ranges), 0);
    return first === undefined ? [] : [{ place: first.place, name: first.name, unitCount: own.length, packCount }];
  });
}

async function customersOf(from: ReadFrom, { customers }: RecallFigures): Promise<RecallReportFacts['customers']> {
  const lines = [];
  for (const customer of customers) {
    const { name, telephone } = await customerOf(from, customer.customerId);
    const { code, palletCount, packCount, deliveries } = customer;
    lines.push({
      ...{ code, name, telephone, palletCount, packCount },
      deliveries: deliveries.map(({ number }) => number).join(', '),
      lots: [...new Set(deliveries.flatMap(({ lotCodes }) => lotCodes))].join(', '),
      closedPackCount: customer.returnedPackCount + customer.destroyedPackCount + customer.soldPackCount,
    });
  }
  return lines;
}
