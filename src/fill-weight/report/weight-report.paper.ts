import { NoteFlow, noteLeftMm, noteWidthMm } from '../../platform/printing/flowing-sheets.js';
import type { DrawPaper } from '../../platform/printing/paper-renderers.js';
import { thousands } from '../../platform/printing/printed-figures.js';
import { PdfKit } from '../../platform/printing/pdf-kit.js';
import type { PdfColumn, PdfRow } from '../../platform/printing/pdf-table.js';
import { say } from '../../platform/sentences/sentences.js';
import { drawHistogram } from './histogram-drawing.js';
import { drawHours } from './hours-drawing.js';
import type { PrintedMarket, WeightReportFacts } from './weight-report.facts.js';

export const weightReportKind = 'weight-report';
/** Edition 2 adds what the line was set to, edition 3 the chart of the hours: a report has what its facts have. */
export const weightReportEdition = '3';
export const weightReportEditions = ['1', '2', weightReportEdition] as const;

export const url = import.meta.url;
export const draw: DrawPaper = (facts, issuedAt) => weightReport(facts as WeightReportFacts, issuedAt);

/** A run's weights for an inspector, A4: the verdict first, then what was weighed and how, then what it rests on. */
export async function weightReport(facts: WeightReportFacts, issuedAt: string): Promise<Uint8Array> {
  const title = `${say('weight-report-title')} ${facts.runNumber}`;
  const kit = await PdfKit.begin(title, issuedAt);
  const flow = new NoteFlow(kit, `${title} · ${say('weight-report-continued')}`);
  head(flow, facts);
  for (const { name, says } of facts.about) flow.paragraph(`${name}: ${says}`);
  flow.yMm += 2;
  flow.table(say('weight-report-counts'), pairColumns(), facts.counts.map(pairRow));
  for (const market of facts.markets) marketBlock(flow, market);
  drawHistogram(flow, facts);
  drawHours(flow, facts);
  hours(flow, facts);
  shortPacks(flow, facts);
  settings(flow, facts);
  whatChanged(flow, facts);
  cautions(flow);
  feet(kit, facts);
  return kit.bytes();
}

function head(flow: NoteFlow, facts: WeightReportFacts): void {
  flow.line(`${say('weight-report-title')} · ${facts.siteName}`, { sizePoints: 11, quiet: true });
  flow.line(facts.runNumber, { sizePoints: 20, bold: true });
  flow.yMm += 1;
  flow.paragraph(facts.verdict, { sizePoints: 10.5, bold: true });
  if (facts.isOpen) flow.paragraph(say('weight-report-open'));
  flow.yMm += 2;
}

const pairColumns = (): readonly PdfColumn[] => [
  { title: say('weight-report-what'), widthMm: 90 },
  { title: say('weight-report-found'), widthMm: 50, align: 'right' },
];

function pairRow({ name, says }: WeightReportFacts['counts'][number]): PdfRow {
  return { cells: [name, says] };
}

/** A market's rules, one after the other: the verdict, the numbers, where the rule stands, how that is known. */
function marketBlock(flow: NoteFlow, { market, overall, ruleSets }: PrintedMarket): void {
  if (ruleSets.length === 0) {
    flow.paragraph(`${market}: ${overall}`);
    return;
  }
  flow.need(22);
  flow.yMm += 1;
  flow.paragraph(`${market}: ${overall}`, { bold: true, sizePoints: 10 });
  for (const { title, rules } of ruleSets) {
    flow.need(14);
    flow.line(title, { quiet: true });
    for (const { rule, verdict, says, notes, source } of rules) {
      flow.need(12);
      flow.paragraph(`${rule}: ${verdict}`, { bold: true });
      flow.paragraph([says, ...notes].join(' '));
      flow.paragraph(source, { sizePoints: 7.5, quiet: true });
      flow.yMm += 0.6;
    }
  }
  flow.yMm += 1.5;
}

function hours(flow: NoteFlow, facts: WeightReportFacts): void {
  const columns: readonly PdfColumn[] = [
    { title: say('weight-report-hour'), widthMm: 60 },
    { title: say('weights-packs'), widthMm: 28, align: 'right' },
    { title: say('weights-one-of-means'), widthMm: 32, align: 'right' },
    { title: say('fill-rule-beyondT1'), widthMm: 30, align: 'right' },
    { title: say('fill-rule-beyondT2'), widthMm: 30, align: 'right' },
  ];
  table(flow, 'run-weights-hours', columns, facts.hours);
}

function shortPacks(flow: NoteFlow, facts: WeightReportFacts): void {
  const columns: readonly PdfColumn[] = [
    { title: say('weight-report-when'), widthMm: 60 },
    { title: say('weight-report-sequence'), widthMm: 50, align: 'right' },
    { title: say('run-weights-head'), widthMm: 30, align: 'right' },
    { title: say('weight-report-net'), widthMm: 40, align: 'right' },
  ];
  table(flow, 'weight-report-short', columns, facts.shortPacks);
  const more = facts.shortPackCount - facts.shortPacks.length;
  if (more > 0) flow.line(say('weight-report-more-short', { count: thousands(more) }));
}

function settings(flow: NoteFlow, facts: WeightReportFacts): void {
  if (facts.settings === undefined) return;
  heading(flow, 'weight-report-settings');
  for (const text of facts.settings) flow.paragraph(text);
}

function whatChanged(flow: NoteFlow, facts: WeightReportFacts): void {
  heading(flow, 'weight-report-tares');
  for (const text of facts.tareCorrections) flow.paragraph(text);
  if (facts.tareCorrections.length === 0) flow.line(say('weight-report-none'), { quiet: true });
  else flow.paragraph(say('weight-report-anew'));
  if (facts.unreadable.length === 0) return;
  heading(flow, 'run-weights-unreadable');
  for (const text of facts.unreadable) flow.paragraph(text);
  const ofBlocks: readonly PdfColumn[] = [
    { title: say('run-weights-block'), widthMm: 74 },
    { title: say('run-weights-sequences'), widthMm: 40 },
    { title: say('weights-packs'), widthMm: 20, align: 'right' },
    { title: '', widthMm: 4 },
    { title: say('run-weights-why'), widthMm: 42 },
  ];
  if (facts.damagedBlocks.length > 0) flow.table(say('run-weights-damaged'), ofBlocks, [...facts.damagedBlocks]);
}

function cautions(flow: NoteFlow): void {
  heading(flow, 'weight-report-note');
  for (const code of ['fill-law-caution', 'weight-report-inspector', 'weight-report-memory']) {
    flow.paragraph(say(code), { sizePoints: 8 });
  }
}

function heading(flow: NoteFlow, code: string): void {
  flow.need(16);
  flow.yMm += 2;
  flow.line(say(code), { bold: true });
}

/** A section with its rows, or the words that there are none. */
function table(flow: NoteFlow, code: string, columns: readonly PdfColumn[], rows: readonly PdfRow[]): void {
  flow.yMm += 1;
  if (rows.length > 0) {
    flow.table(say(code), columns, rows);
    return;
  }
  heading(flow, code);
  flow.line(say('weight-report-none'), { quiet: true });
}

function feet(kit: PdfKit, facts: WeightReportFacts): void {
  const by = say('weight-report-issued', { at: facts.issuedAtLocal, who: facts.issuedBy });
  kit.sheets.forEach((sheet, place) => {
    const at = { xMm: noteLeftMm, yMm: sheet.heightMm - 11, widthMm: noteWidthMm, sizePoints: 8, quiet: true };
    sheet.text(`${facts.runNumber} · ${by}`, { ...at, widthMm: noteWidthMm - 28, leastPoints: 6 });
    sheet.text(say('weight-report-page', { page: place + 1, pages: kit.sheets.length }), { ...at, align: 'right' });
  });
}
