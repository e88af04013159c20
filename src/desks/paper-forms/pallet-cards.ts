import type { PdfKit } from '../../platform/printing/pdf-kit.js';
import type { PdfSheet } from '../../platform/printing/pdf-sheet.js';
import { printedSscc } from '../../platform/printing/printed-figures.js';
import { gs1Linear } from '../../platform/printing/symbols.js';
import type { PaperFormFacts } from './form-kinds.js';
import type { FormWords } from './paper-form.words.js';

const cardMm = { width: 105, height: 136 };
const cardsOfPage = 4;
const insetMm = 8;

/** A card for each number set aside, to be cut out and stuck on its pallet: nothing else can be printed that night. */
export function drawPalletCards(kit: PdfKit, facts: PaperFormFacts, said: FormWords): void {
  let sheet: PdfSheet | null = null;
  facts.ssccs.forEach((sscc, place) => {
    const onPage = place % cardsOfPage;
    if (sheet === null || onPage === 0) sheet = newPage(kit);
    const at = { xMm: (onPage % 2) * cardMm.width, yMm: 5 + Math.floor(onPage / 2) * cardMm.height };
    drawCard(sheet, { facts, said, sscc, row: place + 1 }, at);
  });
}

function newPage(kit: PdfKit): PdfSheet {
  const sheet = kit.addSheet('a4');
  const middleMm = 5 + cardMm.height;
  sheet.rule({ xMm: 0, yMm: middleMm }, { xMm: sheet.widthMm, yMm: middleMm }, 0.1);
  sheet.rule({ xMm: cardMm.width, yMm: 5 }, { xMm: cardMm.width, yMm: 5 + 2 * cardMm.height }, 0.1);
  return sheet;
}

interface Card {
  readonly facts: PaperFormFacts;
  readonly said: FormWords;
  readonly sscc: string;
  readonly row: number;
}

function drawCard(
  sheet: PdfSheet,
  { facts, said, sscc, row }: Card,
  at: { readonly xMm: number; readonly yMm: number },
): void {
  const column = { xMm: at.xMm + insetMm, widthMm: cardMm.width - 2 * insetMm };
  const which = `${facts.number}, ${said.card.row} ${row}`;
  let yMm = sheet.text(`${said.card.title} · ${facts.siteName} · ${facts.lineName}`, {
    ...{ ...column, yMm: at.yMm + 5, sizePoints: 10 },
  });
  yMm = sheet.text(which, { ...column, yMm, sizePoints: 16, bold: true });
  for (const field of [said.card.product, said.card.packs, said.card.code, said.card.built]) {
    const bottomMm = sheet.text(field, { ...column, yMm: yMm + 9, sizePoints: 9 });
    sheet.rule({ xMm: column.xMm + 36, yMm: bottomMm }, { xMm: column.xMm + column.widthMm, yMm: bottomMm });
    yMm = bottomMm;
  }
  yMm = sheet.text(said.card.cut, { ...column, yMm: yMm + 4, sizePoints: 8 });
  yMm = sheet.text(said.card.state, { ...column, yMm, sizePoints: 8, leastPoints: 6 });
  yMm = sheet.text(said.card.caution, { ...column, yMm, sizePoints: 8, bold: true });
  const symbol = gs1Linear(`(00)${sscc}`);
  const symbolMm = at.xMm + (cardMm.width - symbol.widthMm) / 2;
  yMm = sheet.symbol(symbol, { xMm: symbolMm, yMm: yMm + 4 });
  const under = { ...column, yMm: yMm + 1, align: 'centre' } as const;
  sheet.text(`(00) ${printedSscc(sscc)}`, { ...under, sizePoints: 11, bold: true });
}
