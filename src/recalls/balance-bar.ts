import { noteLeftMm, noteWidthMm, type NoteFlow } from '../platform/printing/flowing-sheets.js';
import { say } from '../platform/sentences/sentences.js';
import type { PrintedBalance } from './recall-report.facts.js';

const barMm = 8;
/** A narrower part has no room for its name; the table below has it. */
const leastNamedMm = 22;

/** What was produced as one bar, and under it where it is, to the same scale. */
export function balanceBar(flow: NoteFlow, sums: PrintedBalance): void {
  const { produced, inStore, onDock, onVehicle, dispatched, found, unaccounted } = sums;
  const held = inStore + onDock + onVehicle;
  const whole = Math.max(produced, found);
  if (whole === 0) return;
  flow.need(barMm * 2 + 8);
  bar(flow, whole, [['produced', produced]]);
  bar(flow, whole, [
    ['held', held],
    ['dispatched', dispatched],
    ['used-up', found - held - dispatched],
    ['unaccounted', Math.max(0, unaccounted)],
  ]);
  flow.yMm += 2;
}

function bar(flow: NoteFlow, whole: number, parts: readonly (readonly [string, number])[]): void {
  let xMm = noteLeftMm;
  for (const [name, amount] of parts) {
    const widthMm = (amount / whole) * noteWidthMm;
    if (widthMm === 0) continue;
    flow.page.box({ xMm, yMm: flow.yMm, widthMm, heightMm: barMm });
    if (widthMm >= leastNamedMm) {
      const place = { xMm: xMm + 1, yMm: flow.yMm + 2, widthMm: widthMm - 2, sizePoints: 8 };
      flow.page.text(say(`recall-bar-${name}`), place);
    }
    xMm += widthMm;
  }
  flow.yMm += barMm + 1;
}
