import type { DrawPaper } from '../platform/printing/paper-renderers.js';
import { kilograms, roundKilograms, thousands } from '../platform/printing/printed-figures.js';
import { PdfKit } from '../platform/printing/pdf-kit.js';
import type { PdfColumn, PdfRow } from '../platform/printing/pdf-table.js';
import { say } from '../platform/sentences/sentences.js';
import { NoteFlow, noteLeftMm, noteWidthMm } from '../platform/printing/flowing-sheets.js';
import { balanceBar } from './balance-bar.js';
import { drawRibbons } from './ribbon-drawing.js';
import type { PrintedBalance, RecallReportFacts } from './recall-report.facts.js';

/**
 * The second has the picture of the thread; what was frozen for the first is still drawn, without it. The third says one
 * pack and several packs, and how many hopper periods have no picture.
 */
export const recallReportEditions = ['1', '2', '3'] as const;
export const recallReportEdition = '3';
type Edition = (typeof recallReportEditions)[number];

export const url = import.meta.url;
export const draw: DrawPaper = (facts, issuedAt, edition) =>
  recallReport(facts as RecallReportFacts, issuedAt, edition as Edition);

/** The report of a recall or an exercise, A4: the answer first, then what it rests on, then who signed it. */
export async function recallReport(
  facts: RecallReportFacts,
  issuedAt: string,
  edition: Edition = recallReportEdition,
): Promise<Uint8Array> {
  const title = say(`recall-report-${facts.kind}`);
  const kit = await PdfKit.begin(`${title} ${facts.number}`, issuedAt);
  const flow = new NoteFlow(kit, `${title} ${facts.number} · ${say('note-continued')}`);
  answer(flow, facts, { title, edition });
  scopeAndClock(flow, facts);
  pictures(flow, facts);
  balance(flow, facts);
  places(flow, facts);
  customers(flow, facts);
  bags(flow, facts);
  events(flow, facts);
  records(flow, facts);
  signOff(flow, facts);
  feet(kit, facts);
  return kit.bytes();
}

function answer(
  flow: NoteFlow,
  facts: RecallReportFacts,
  { title, edition }: { readonly title: string; readonly edition: Edition },
): void {
  const { packs, milligrams, customers: told } = facts;
  flow.line(`${title} · ${facts.siteName}`, { sizePoints: 11, quiet: true });
  flow.line(facts.number, { sizePoints: 20, bold: true });
  if (facts.kind === 'exercise') flow.line(say('recall-report-is-exercise'), { bold: true });
  flow.yMm += 2;
  const text = say(edition === '3' ? 'recall-report-says' : 'recall-report-answer', {
    scope: facts.scopes.join('; '),
    packs: thousands(packs.produced),
    kilograms: kilogramsOf(milligrams.produced),
    dispatched: thousands(packs.dispatched),
    customers: told.length,
    held: thousands(packs.inStore + packs.onDock + packs.onVehicle),
    unaccounted: thousands(packs.unaccounted),
    minutes: Math.ceil(facts.tookSeconds / 60),
  });
  flow.paragraph(text, { sizePoints: 10.5, bold: true });
  flow.yMm += 2;
}

function scopeAndClock(flow: NoteFlow, facts: RecallReportFacts): void {
  heading(flow, 'recall-report-scope');
  for (const scope of facts.scopes) flow.line(scope);
  flow.paragraph(say(`recall-report-${facts.hazard}`, { reason: facts.reason }));
  flow.paragraph(
    facts.sureness === 'possible'
      ? say('recall-report-possible')
      : say('recall-report-likely', { reason: facts.surenessReason ?? '' }),
  );
  const never = say('recall-report-not-stated');
  const times = {
    started: facts.startedAtLocal,
    listed: facts.customersListedAtLocal ?? never,
    blocked: facts.stockBlockedAtLocal ?? never,
    stopped: facts.stoppedAtLocal,
    by: facts.openedBy ?? never,
  };
  flow.paragraph(say('recall-report-clock', times));
}

function pictures(flow: NoteFlow, { ribbons = [], ribbonsLeftOut = 0 }: RecallReportFacts): void {
  if (ribbons.length === 0) return;
  heading(flow, 'ribbon-title');
  flow.paragraph(say('ribbon-how-to-read'), { quiet: true });
  if (ribbonsLeftOut > 0) {
    flow.paragraph(say('recall-report-left-out', { drawn: ribbons.length, count: ribbonsLeftOut }));
  }
  for (const one of ribbons) drawRibbons(flow, one);
}

const balanceColumns: readonly PdfColumn[] = [
  { title: 'Where', widthMm: 90 },
  { title: 'Packs', widthMm: 40, align: 'right' },
  { title: 'Sugar, kg', widthMm: 50, align: 'right' },
];

const balanceParts = [
  ...(['inStore', 'onDock', 'onVehicle', 'dispatched'] as const),
  ...(['rejects', 'samples', 'retained', 'scrapped', 'unaccounted'] as const),
] as const;

function balance(flow: NoteFlow, facts: RecallReportFacts): void {
  const { packs, milligrams } = facts;
  heading(flow, 'recall-report-balance');
  balanceBar(flow, milligrams);
  const row = (part: keyof Omit<PrintedBalance, 'accountedPercent'>): PdfRow => ({
    cells: [say(`recall-part-${part}`), thousands(packs[part]), kilogramsOf(milligrams[part])],
  });
  const total = { ...row('produced'), isTotal: true };
  flow.table(say('recall-report-sums'), balanceColumns, [...balanceParts.map(row), total]);
  const none = say('recall-report-no-share');
  flow.paragraph(
    say('recall-report-shares', {
      accounted: packs.accountedPercent ?? none,
      recovered: facts.recoveryPercent ?? none,
      closed: facts.closedOutPercent ?? none,
    }),
  );
  if (facts.overRecall !== null) flow.paragraph(say('recall-report-over', { factor: facts.overRecall }));
  if (facts.hasAssumed) flow.paragraph(say('recall-report-assumed'), { quiet: true });
  if (facts.explanation !== null) flow.paragraph(say('recall-report-explained', { words: facts.explanation }));
}

function places(flow: NoteFlow, facts: RecallReportFacts): void {
  const columns: readonly PdfColumn[] = [
    { title: 'Where', widthMm: 90 },
    { title: 'Pallets and bags', widthMm: 40, align: 'right' },
    { title: 'Packs', widthMm: 50, align: 'right' },
  ];
  const rows = facts.places.map(({ place, name, unitCount, packCount }) => ({
    cells: [`${say(`recall-place-${place}`)} ${name ?? ''}`.trim(), thousands(unitCount), thousands(packCount)],
  }));
  table(flow, 'recall-report-where', columns, rows);
}

function customers(flow: NoteFlow, facts: RecallReportFacts): void {
  const columns: readonly PdfColumn[] = [
    { title: 'Customer', widthMm: 42 },
    { title: 'Telephone', widthMm: 30 },
    { title: 'Documents', widthMm: 40 },
    { title: 'Lots', widthMm: 28 },
    { title: 'Packs', widthMm: 20, align: 'right' },
    { title: 'Answered for', widthMm: 20, align: 'right' },
  ];
  const rows = facts.customers.map((one) => ({
    cells: [
      one.name ?? one.code,
      one.telephone ?? '',
      one.deliveries,
      one.lots,
      thousands(one.packCount),
      thousands(one.closedPackCount),
    ],
  }));
  table(flow, 'recall-report-customers', columns, rows);
}

function bags(flow: NoteFlow, facts: RecallReportFacts): void {
  const columns: readonly PdfColumn[] = [
    { title: 'Bag', widthMm: 30 },
    { title: 'Packing run', widthMm: 42 },
    { title: 'Least, kg', widthMm: 27, align: 'right' },
    { title: 'Likely, kg', widthMm: 27, align: 'right' },
    { title: 'Most, kg', widthMm: 27, align: 'right' },
    { title: '', widthMm: 4 },
    { title: 'How sure', widthMm: 23 },
  ];
  const rows = facts.bags.map(({ parent, child, leastGrams, likelyGrams, mostGrams, word }) => ({
    cells: [
      parent,
      child,
      kilograms(leastGrams),
      kilograms(likelyGrams),
      kilograms(mostGrams),
      '',
      say(`link-${word}`),
    ],
  }));
  table(flow, 'recall-report-bags', columns, rows);
}

function events(flow: NoteFlow, facts: RecallReportFacts): void {
  const columns: readonly PdfColumn[] = [
    { title: 'When', widthMm: 46 },
    { title: 'What', widthMm: 34 },
    { title: 'Detail', widthMm: 72 },
    { title: 'Sugar, kg', widthMm: 28, align: 'right' },
  ];
  const rows = facts.events.map(({ atLocal, kind, says, grams }) => ({
    cells: [atLocal, say(`line-event-${kind}`), says, grams === null ? '' : kilograms(grams)],
  }));
  table(flow, 'recall-report-events', columns, rows);
  const ofEntries: readonly PdfColumn[] = [
    { title: 'Journal', widthMm: 20 },
    { title: 'Entry', widthMm: 68 },
    { title: 'Happened', widthMm: 46 },
    { title: 'Recorded', widthMm: 46 },
  ];
  const corrected = facts.corrections.map(({ sequence, action, occurredAtLocal, recordedAtLocal }) => ({
    cells: [String(sequence), say(`action-${action}`), occurredAtLocal, recordedAtLocal],
  }));
  table(flow, 'recall-report-corrections', ofEntries, corrected);
}

function records(flow: NoteFlow, facts: RecallReportFacts): void {
  const columns: readonly PdfColumn[] = [
    { title: 'Record', widthMm: 34 },
    { title: 'Number', widthMm: 66 },
    { title: 'Where', widthMm: 80 },
  ];
  const rows = facts.records.map(({ kind, number, link }) => ({ cells: [say(kind), number, link] }));
  table(flow, 'recall-report-records', columns, rows);
}

function signOff(flow: NoteFlow, facts: RecallReportFacts): void {
  heading(flow, 'recall-report-sign');
  const who = facts.signedBy ?? say('recall-report-not-stated');
  flow.paragraph(say('recall-report-signed', { who, at: facts.signedAtLocal }), { bold: true });
  flow.paragraph(say('recall-report-hashes', { content: facts.contentHash, head: facts.journalHead }), {
    sizePoints: 7.5,
    quiet: true,
  });
  flow.paragraph(say('recall-report-law'), { sizePoints: 7.5, quiet: true });
}

function heading(flow: NoteFlow, code: string): void {
  flow.need(20);
  flow.yMm += 2;
  flow.line(say(code), { bold: true });
}

/** A section with its rows, or the words that there are none. */
function table(flow: NoteFlow, code: string, columns: readonly PdfColumn[], rows: readonly PdfRow[]): void {
  flow.yMm += 2;
  if (rows.length > 0) {
    flow.table(say(code), columns, rows);
    return;
  }
  heading(flow, code);
  flow.line(say('recall-report-none'), { quiet: true });
}

function feet(kit: PdfKit, facts: RecallReportFacts): void {
  kit.sheets.forEach((sheet, place) => {
    const at = { xMm: noteLeftMm, yMm: sheet.heightMm - 11, widthMm: noteWidthMm, sizePoints: 8, quiet: true };
    const mark = facts.kind === 'exercise' ? ` · ${say('recall-report-is-exercise')}` : '';
    const asAt = say('recall-report-as-at', { at: facts.signedAtLocal, hash: facts.contentHash.slice(0, 16) });
    sheet.text(`${facts.number}${mark} · ${asAt}`, { ...at, widthMm: noteWidthMm - 24, leastPoints: 6 });
    sheet.text(say('note-page', { page: place + 1, pages: kit.sheets.length }), { ...at, align: 'right' });
  });
}

function kilogramsOf(milligrams: number): string {
  return roundKilograms(Math.round(milligrams / 1000));
}
