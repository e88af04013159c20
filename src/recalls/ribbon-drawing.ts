import { noteLeftMm, noteWidthMm, type NoteFlow } from '../platform/printing/flowing-sheets.js';
import { say } from '../platform/sentences/sentences.js';
import { layOutRibbons, ribbonSizes, type Corners, type RibbonPicture } from '../tracing/ribbon-layout.js';
import { amountsText, axisText } from '../tracing/ribbon-words.js';
import type { RecallRibbons } from './recall-report.facts.js';

/** Millimetres of one unit of the picture. */
const scale = noteWidthMm / ribbonSizes.width;
const likelyGrey = 0.62;

/** The picture of the thread, as on the screen: the same shapes from the same layout. */
export function drawRibbons(flow: NoteFlow, ribbons: RecallRibbons): void {
  const picture = layOutRibbons(ribbons);
  flow.need(picture.height * scale + 10);
  flow.line(say('ribbon-caption', { hopper: ribbons.hopperCode, at: ribbons.startedAtLocal }), { bold: true });
  const topMm = flow.yMm;
  const pen = penOf(flow, topMm);
  lanes(pen, picture);
  for (const { most, likely, least } of picture.ribbons) {
    for (const corners of most) pen.shape(corners, { lineMm: 0.25, dashMm: 1 });
    for (const corners of likely) pen.shape(corners, { fillGrey: likelyGrey, lineMm: 0.1 });
    for (const corners of least) pen.shape(corners, { fillGrey: 0 });
  }
  rows(pen, picture);
  flow.yMm = topMm + picture.height * scale + 2;
}

interface Pen {
  shape(corners: Corners, style: { fillGrey?: number; lineMm?: number; dashMm?: number }): void;
  text(text: string, x: number, y: number, width?: number, align?: 'left' | 'centre'): void;
  line(from: readonly [number, number], to: readonly [number, number]): void;
}

/** Draws in the picture's own units. */
function penOf({ page }: NoteFlow, topMm: number): Pen {
  const at = ([x, y]: readonly [number, number]) => ({ xMm: noteLeftMm + x * scale, yMm: topMm + y * scale });
  return {
    shape: (corners, style) => {
      page.shape(
        corners.map((corner) => {
          const { xMm, yMm } = at(corner);
          return [xMm, yMm] as const;
        }),
        style,
      );
    },
    text: (text, x, y, width = 300, align = 'left') => {
      page.text(text, { ...at([x, y]), sizePoints: 7, widthMm: width * scale, align });
    },
    line: (from, to) => {
      page.rule(at(from), at(to), 0.15);
    },
  };
}

function lanes(pen: Pen, picture: RibbonPicture): void {
  const { tippedTop, packedTop, laneHeight, width } = ribbonSizes;
  const below = packedTop + laneHeight;
  pen.text(say('ribbon-tipped'), 0, 0);
  for (const { x, width: wide, part, label } of picture.boxes) {
    const box = boxOf(x, tippedTop, wide, laneHeight);
    if (part === 'drawn') pen.shape(box, { fillGrey: 0.85, lineMm: 0.3 });
    else pen.shape(box, part === 'possible' ? { lineMm: 0.2, dashMm: 1 } : { lineMm: 0.1 });
    pen.text(label, x, tippedTop + 8, wide, 'centre');
  }
  pen.shape(boxOf(picture.outX, packedTop, picture.outWidth, laneHeight), { lineMm: 0.1 });
  for (const { x, width: wide } of picture.windows) {
    pen.shape(boxOf(x, packedTop, wide, laneHeight), { fillGrey: 0.95, lineMm: 0.4 });
  }
  for (const [from, to] of picture.hatches) pen.line(from, to);
  for (const y of [tippedTop - 4, below + 6]) pen.line([0, y], [width, y]);
  for (const { x, grams } of picture.ticks) {
    const left = Math.min(width - 60, Math.max(0, x - 30));
    pen.text(axisText(grams), left, tippedTop - 22, 60, 'centre');
    pen.text(axisText(grams), left, below + 9, 60, 'centre');
  }
  pen.text(say('ribbon-packed'), 0, below + 26);
}

function rows(pen: Pen, picture: RibbonPicture): void {
  const { barLeft, barWidth, rowHeight, rowsTop, width } = ribbonSizes;
  for (const { bag, y, leastWidth, likelyWidth, mostWidth } of picture.rows) {
    const textLeft = barLeft + barWidth + 10;
    pen.text(bag.name, 0, y + 3, barLeft - 4);
    pen.shape(boxOf(barLeft, y + 2, mostWidth, rowHeight - 6), { lineMm: 0.2, dashMm: 1 });
    pen.shape(boxOf(barLeft, y + 5, likelyWidth, rowHeight - 12), { fillGrey: likelyGrey });
    if (leastWidth > 0) pen.shape(boxOf(barLeft, y + 9, leastWidth, rowHeight - 20), { fillGrey: 0 });
    pen.text(amountsText(bag), textLeft, y + 3, width - textLeft);
  }
  if (picture.withoutRow === 0) return;
  const words = say('ribbon-without-row', { count: picture.withoutRow });
  pen.text(words, 0, rowsTop + picture.rows.length * rowHeight + 3);
}

function boxOf(x: number, y: number, width: number, height: number): Corners {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ];
}
