import { noteLeftMm, noteWidthMm, type NoteFlow } from '../../platform/printing/flowing-sheets.js';
import { thousands } from '../../platform/printing/printed-figures.js';
import { say } from '../../platform/sentences/sentences.js';
import { gramsText } from '../weight-text.js';
import type { PrintedBin, PrintedLimits, WeightReportFacts } from './weight-report.facts.js';

const tallMm = 46;
const headMm = 12;
const footMm = 10;
const leftMm = noteLeftMm + 14;
const widthMm = noteWidthMm - 18;
/** The law's lines are thick; nothing else in the picture is. */
const lawMm = 0.9;

/** The packs by their weight between T2, T1 and the nominal quantity; beyond T1 the bars are empty, beyond T2 black. */
export function drawHistogram(flow: NoteFlow, { bins, limits }: WeightReportFacts): void {
  if (limits === null || bins.length === 0) return;
  flow.need(headMm + tallMm + footMm + 8);
  flow.yMm += 2;
  flow.line(say('weights-bins'), { bold: true });
  const topMm = flow.yMm + headMm;
  const bottomMm = topMm + tallMm;
  const x = scaleOf(bins, limits);
  const most = Math.max(1, ...bins.map(({ count }) => count));
  const y = (count: number): number => bottomMm - (count / most) * tallMm;
  for (const count of [0, most]) {
    flow.page.rule({ xMm: leftMm, yMm: y(count) }, { xMm: leftMm + widthMm, yMm: y(count) }, 0.15);
    flow.page.text(thousands(count), {
      xMm: noteLeftMm,
      yMm: y(count) - 2,
      widthMm: 12,
      sizePoints: 7,
      align: 'right',
    });
  }
  for (const bin of bins) bar(flow, bin, { x, y, bottomMm, limits });
  lawLines(flow, limits, { x, topMm, bottomMm });
  const mean = say('weights-mean-mark', { grams: gramsText(limits.mean, 2) });
  flow.page.shape(
    [
      [x(limits.mean), bottomMm + 0.5],
      [x(limits.mean) - 1.5, bottomMm + 3],
      [x(limits.mean) + 1.5, bottomMm + 3],
    ],
    { fillGrey: 0 },
  );
  flow.page.text(mean, {
    xMm: x(limits.mean) - 25,
    yMm: bottomMm + 3.5,
    widthMm: 50,
    sizePoints: 7.5,
    align: 'centre',
  });
  flow.yMm = bottomMm + footMm;
}

type Scale = (value: number) => number;

function scaleOf(bins: readonly PrintedBin[], limits: PrintedLimits): Scale {
  const ends = [limits.nominal, limits.mean, ...bins.flatMap(({ from, until }) => [from, until])];
  const all = [...ends, ...[limits.t1, limits.t2].filter((limit) => limit !== null)];
  const [low, high] = [Math.min(...all), Math.max(...all)];
  const margin = (high - low) * 0.03;
  return (milligrams) => leftMm + ((milligrams - low + margin) / (high - low + 2 * margin)) * widthMm;
}

interface Drawn {
  readonly x: Scale;
  readonly y: Scale;
  readonly bottomMm: number;
  readonly limits: PrintedLimits;
}

function bar(flow: NoteFlow, { from, until, count }: PrintedBin, { x, y, bottomMm, limits }: Drawn): void {
  if (count === 0) return;
  const isBeyond = (limit: number | null): boolean => limit !== null && until <= limit;
  const fillGrey = isBeyond(limits.t2) ? 0 : isBeyond(limits.t1) ? 1 : 0.78;
  // A single pack among thousands still shows.
  const top = Math.min(y(count), bottomMm - 0.4);
  flow.page.shape(
    [
      [x(from), top],
      [x(until), top],
      [x(until), bottomMm],
      [x(from), bottomMm],
    ],
    { fillGrey, lineMm: 0.15 },
  );
}

function lawLines(
  flow: NoteFlow,
  { nominal, t1, t2 }: PrintedLimits,
  { x, topMm, bottomMm }: { readonly x: Scale; readonly topMm: number; readonly bottomMm: number },
): void {
  const lines = [
    { name: 'T2', milligrams: t2 },
    { name: 'T1', milligrams: t1 },
    { name: say('weights-nominal'), milligrams: nominal },
  ];
  for (const { name, milligrams } of lines) {
    if (milligrams === null) continue;
    const at = x(milligrams);
    flow.page.rule({ xMm: at, yMm: topMm - 3 }, { xMm: at, yMm: bottomMm }, lawMm);
    const place = { xMm: at - 15, widthMm: 30, sizePoints: 7.5, align: 'centre' } as const;
    flow.page.text(name, { ...place, yMm: topMm - 11, bold: true });
    flow.page.text(`${gramsText(milligrams)} g`, { ...place, yMm: topMm - 7 });
  }
}
