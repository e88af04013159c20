import { kilograms, printedDay, printedSscc, roundKilograms, thousands } from '../platform/printing/printed-figures.js';
import { PdfKit } from '../platform/printing/pdf-kit.js';
import type { PdfColumn, PdfRow } from '../platform/printing/pdf-table.js';
import { gs1Linear } from '../platform/printing/symbols.js';
import { say } from '../platform/sentences/sentences.js';
import type { DeliveryNoteFacts, NoteBagGroup, NoteLot, NoteProduct } from './delivery-note.facts.js';
import { noteHead } from './note-head.js';
import { NoteFlow, noteLeftMm, noteWidthMm } from '../platform/printing/flowing-sheets.js';

export const deliveryNoteKind = 'delivery-note';
/** The first says "1 pallets"; notes that were given out in it are drawn so for ever. */
export const deliveryNoteEditions = ['1', '2'] as const;
export const deliveryNoteEdition = '2';
type Edition = (typeof deliveryNoteEditions)[number];

/** The sentences that count a lot's pallets and a grade's bags. */
const countsOf = {
  1: { pallets: 'note-lot-total', bags: 'note-bags-total' },
  2: { pallets: 'note-lot-counted', bags: 'note-bags-counted' },
} as const;

/** A delivery note, A4: what did I get, can I check it in five minutes, whom do I ask. */
export async function deliveryNote(
  facts: DeliveryNoteFacts,
  issuedAt: string,
  edition: Edition = deliveryNoteEdition,
): Promise<Uint8Array> {
  const kit = await PdfKit.begin(`${say('note-title')} ${facts.number}`, issuedAt);
  const name = facts.customer.name ?? facts.customer.code;
  const flow = new NoteFlow(kit, `${say('note-title')} ${facts.number} · ${name} · ${say('note-continued')}`);
  noteHead(flow, facts);
  for (const product of facts.products) productBlock(flow, product, edition);
  for (const group of facts.bagGroups) bagBlock(flow, group, edition);
  totals(flow, facts);
  endings(flow, facts);
  signatures(flow);
  symbols(flow, facts);
  feet(kit, facts);
  return kit.bytes();
}

const palletColumns = (): readonly PdfColumn[] => [
  { title: say('note-column-pallet'), widthMm: 84 },
  { title: say('note-column-packs'), widthMm: 24, align: 'right' },
  { title: say('note-column-declared'), widthMm: 36, align: 'right' },
  { title: say('note-column-pallet-gross'), widthMm: 36, align: 'right' },
];

function productBlock(flow: NoteFlow, product: NoteProduct, edition: Edition): void {
  flow.need(30);
  const { name, gtin, nominalGrams } = product;
  flow.line(name, { sizePoints: 12, bold: true });
  flow.line(say('note-product', { gtin, nominal: kilograms(nominalGrams) }), { sizePoints: 8.5, quiet: true });
  flow.yMm += 1;
  for (const lot of product.lots) {
    flow.table(lotCaption(lot), palletColumns(), [...palletRows(lot), lotTotal(lot, edition)]);
  }
}

function lotCaption(lot: NoteLot): string {
  const day = lot.bestBeforeOn === null ? '' : ` · ${say('label-best-before')} ${printedDay(lot.bestBeforeOn)}`;
  return `${say('note-lot')} ${lot.code}${day}`;
}

function palletRows(lot: NoteLot): readonly PdfRow[] {
  return lot.pallets.map(({ sscc, packCount, netGrams, grossGrams }) => ({
    cells: [
      printedSscc(sscc),
      thousands(packCount),
      kilograms(netGrams),
      grossGrams === null ? say('note-gross-above') : roundKilograms(grossGrams),
    ],
  }));
}

function lotTotal(lot: NoteLot, edition: Edition): PdfRow {
  const title = say(countsOf[edition].pallets, { lot: lot.code, count: lot.pallets.length });
  return { cells: [title, thousands(lot.packCount), kilograms(lot.netGrams), ''], isTotal: true };
}

const bagColumns = (): readonly PdfColumn[] => [
  { title: say('note-column-bag'), widthMm: 26 },
  { title: 'SSCC', widthMm: 54 },
  { title: say('note-column-scale'), widthMm: 18 },
  { title: say('note-column-gross'), widthMm: 26, align: 'right' },
  { title: say('note-column-tare'), widthMm: 28, align: 'right' },
  { title: say('note-column-net'), widthMm: 28, align: 'right' },
];

function bagBlock(flow: NoteFlow, group: NoteBagGroup, edition: Edition): void {
  const rows: readonly PdfRow[] = group.bags.map((bag) => ({
    cells: [
      bag.number,
      printedSscc(bag.sscc),
      bag.scaleCode,
      kilograms(bag.grossGrams),
      `${kilograms(bag.tareGrams)}${bag.isPresetTare ? ' PT' : ''}`,
      kilograms(bag.netGrams),
    ],
  }));
  const counted = say(countsOf[edition].bags, { count: rows.length });
  const total = { cells: [counted, '', '', '', '', kilograms(group.netGrams)] };
  flow.need(25);
  flow.line(group.grade, { sizePoints: 12, bold: true });
  flow.table(say('note-bags'), bagColumns(), [...rows, { ...total, isTotal: true }]);
}

const totalColumns = (): readonly PdfColumn[] => [
  { title: say('note-column-pallets'), widthMm: 30, align: 'right' },
  { title: say('note-column-bags'), widthMm: 30, align: 'right' },
  { title: say('note-column-packs'), widthMm: 36, align: 'right' },
  { title: say('note-column-net'), widthMm: 42, align: 'right' },
  { title: say('note-column-gross'), widthMm: 42, align: 'right' },
];

function totals(flow: NoteFlow, { totals: sums }: DeliveryNoteFacts): void {
  const cells = [
    thousands(sums.palletCount),
    thousands(sums.bagCount),
    thousands(sums.packCount),
    kilograms(sums.netGrams),
    roundKilograms(sums.grossGrams),
  ];
  flow.table(say('note-totals'), totalColumns(), [{ cells, isBold: true }]);
  flow.paragraph(say('note-weights-say'), { sizePoints: 8, quiet: true });
  flow.yMm += 2;
}

/** What is short, what is to be said, and every lot once more in one line, for filing. */
function endings(flow: NoteFlow, facts: DeliveryNoteFacts): void {
  if (facts.short.length > 0) {
    const lines = facts.short.map(({ name, ordered, loaded }) =>
      say('note-short-line', { name, ordered: thousands(ordered), loaded: thousands(loaded) }),
    );
    const why = [shortWords(facts.shortCode), facts.shortReason].filter((words) => words != null).join(': ');
    flow.paragraph(`${say('note-short')} ${lines.join('; ')}. ${why}`, { bold: true });
  }
  const lots = facts.products.flatMap((product) => product.lots.map((lot) => lot.code));
  if (lots.length > 0) flow.paragraph(`${say('note-lots')} ${[...new Set(lots)].join(', ')}`);
  if (facts.remarks !== null) flow.paragraph(`${say('note-remarks')} ${facts.remarks}`);
  flow.yMm += 2;
}

/** `other` says nothing: the words beside it do. */
function shortWords(code: string | null | undefined): string | null {
  return code == null || code === 'other' ? null : say(`short-${code}`);
}

const boxMm = 26;

/** Three hands: who loaded, who drives, who received; each with the time. */
function signatures(flow: NoteFlow): void {
  flow.need(boxMm + 20);
  const widthMm = (noteWidthMm - 8) / 3;
  ['note-sign-loaded', 'note-sign-driver', 'note-sign-received'].forEach((code, place) => {
    const xMm = noteLeftMm + place * (widthMm + 4);
    flow.page.box({ xMm, yMm: flow.yMm, widthMm, heightMm: boxMm });
    const inside = { xMm: xMm + 2, widthMm: widthMm - 4, sizePoints: 8 };
    flow.page.text(say(code), { ...inside, yMm: flow.yMm + 1, bold: true });
    flow.page.text(say('note-sign-lines'), { ...inside, yMm: flow.yMm + boxMm - 5, quiet: true });
  });
  flow.yMm += boxMm + 2;
  flow.paragraph(say('note-caution'), { sizePoints: 7.5, quiet: true });
  flow.yMm += 2;
}

const symbolBarMm = 13;
const symbolRowMm = symbolBarMm + 9;

/** One symbol a unit, for scanning at receipt: two in a row, each with its quiet zones. */
function symbols(flow: NoteFlow, facts: DeliveryNoteFacts): void {
  const ofPallets = facts.products.flatMap((product) =>
    product.lots.flatMap((lot) => lot.pallets.map((pallet) => pallet.sscc)),
  );
  const ofBags = facts.bagGroups.flatMap((group) => group.bags.map((bag) => bag.sscc));
  const ssccs = [...new Set([...ofPallets, ...ofBags])];
  flow.need(symbolRowMm + 8);
  flow.line(say('note-symbols'), { bold: true });
  flow.yMm += 1;
  for (let place = 0; place < ssccs.length; place += 2) {
    flow.need(symbolRowMm);
    ssccs.slice(place, place + 2).forEach((sscc, side) => {
      const symbol = gs1Linear(`(00)${sscc}`, { moduleMm: 0.495, barHeightMm: symbolBarMm });
      const xMm = side === 0 ? noteLeftMm : noteLeftMm + noteWidthMm - symbol.widthMm;
      const belowMm = flow.page.symbol(symbol, { xMm, yMm: flow.yMm });
      const text = { xMm, yMm: belowMm + 0.3, widthMm: symbol.widthMm, sizePoints: 8.5, align: 'centre' } as const;
      flow.page.text(`(00) ${sscc}`, text);
    });
    flow.yMm += symbolRowMm;
  }
}

function feet(kit: PdfKit, facts: DeliveryNoteFacts): void {
  kit.sheets.forEach((sheet, place) => {
    const yMm = sheet.heightMm - 11;
    const at = { xMm: noteLeftMm, yMm, widthMm: noteWidthMm, sizePoints: 8, quiet: true };
    sheet.text(`${facts.sender.name} · ${facts.number} · ${say('note-version', { version: facts.version })}`, at);
    const page = say('note-page', { page: place + 1, pages: kit.sheets.length });
    sheet.text(page, { ...at, align: 'right' });
  });
}
