import { printedDay } from '../platform/printing/printed-figures.js';
import { matrixSymbol } from '../platform/printing/symbols.js';
import { say } from '../platform/sentences/sentences.js';
import type { DeliveryNoteFacts } from './delivery-note.facts.js';
import { noteLeftMm, noteWidthMm, type NoteFlow } from '../platform/printing/flowing-sheets.js';

const halfMm = noteWidthMm / 2 - 4;

/** The head of a note: its number, who sends and who receives, the order, the vehicle and its seal. */
export function noteHead(flow: NoteFlow, facts: DeliveryNoteFacts): void {
  numberBlock(flow, facts);
  const fromMm = flow.yMm;
  const { sender, customer } = facts;
  const left = party(flow, fromMm, { xMm: noteLeftMm, title: say('note-from') }, [sender.name, `GLN ${sender.gln}`]);
  const right = party(flow, fromMm, { xMm: noteLeftMm + halfMm + 8, title: say('note-to') }, [
    customer.name ?? say('note-name-gone'),
    ...(customer.address ?? '').split('\n').filter((line) => line.trim() !== ''),
    [`${say('note-customer')} ${customer.code}`, customer.gln === null ? null : `GLN ${customer.gln}`]
      .filter((part) => part !== null)
      .join(' · '),
  ]);
  flow.yMm = Math.max(left, right) + 3;
  figures(flow, facts);
  flow.page.rule({ xMm: noteLeftMm, yMm: flow.yMm }, { xMm: noteLeftMm + noteWidthMm, yMm: flow.yMm }, 0.3);
  flow.yMm += 4;
}

function numberBlock(flow: NoteFlow, facts: DeliveryNoteFacts): void {
  const symbol = matrixSymbol('data-matrix', facts.number, 0.743);
  const symbolMm = noteLeftMm + noteWidthMm - symbol.widthMm;
  flow.page.symbol(symbol, { xMm: symbolMm, yMm: flow.yMm });
  const at = { xMm: noteLeftMm, widthMm: noteWidthMm - symbol.widthMm - 6 };
  let yMm = flow.page.text(say('note-title'), { ...at, yMm: flow.yMm, sizePoints: 11, quiet: true });
  yMm = flow.page.text(facts.number, { ...at, yMm, sizePoints: 20, bold: true });
  const version =
    facts.replaces === null
      ? say('note-version', { version: facts.version })
      : say('note-version-of', { version: facts.version, replaces: facts.replaces });
  yMm = flow.page.text(version, { ...at, yMm, sizePoints: 9 });
  flow.yMm = Math.max(yMm, flow.yMm + symbol.heightMm) + 3;
}

function party(
  flow: NoteFlow,
  topMm: number,
  at: { readonly xMm: number; readonly title: string },
  lines: readonly string[],
): number {
  const place = { xMm: at.xMm, widthMm: halfMm };
  let yMm = flow.page.text(at.title, { ...place, yMm: topMm, sizePoints: 7.5, quiet: true });
  lines.forEach((line, index) => {
    yMm = flow.page.text(line, { ...place, yMm, sizePoints: index === 0 ? 11 : 9, bold: index === 0 });
  });
  return yMm;
}

/** Six facts in two rows, each under its title. */
function figures(flow: NoteFlow, facts: DeliveryNoteFacts): void {
  const { vehicle } = facts;
  const pairs: readonly (readonly [string, string])[] = [
    [say('note-order'), facts.orderNumber],
    [say('note-planned'), printedDay(facts.plannedOn)],
    [say('note-left'), facts.leftAtLocal],
    [say('note-vehicle'), `${vehicle.registration} · ${say('note-haulier')} ${vehicle.haulierCode}`],
    [say('note-checked'), vehicle.checkedAtLocal],
    [say('note-seal'), facts.seal],
  ];
  const columnMm = noteWidthMm / 3;
  pairs.forEach(([title, value], index) => {
    const at = { xMm: noteLeftMm + (index % 3) * columnMm, widthMm: columnMm - 4 };
    const rowMm = flow.yMm + Math.floor(index / 3) * 11;
    const belowMm = flow.page.text(title, { ...at, yMm: rowMm, sizePoints: 7.5, quiet: true });
    flow.page.text(value, { ...at, yMm: belowMm, sizePoints: 10, bold: true, leastPoints: 7 });
  });
  flow.yMm += 24;
}
