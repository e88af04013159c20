import { noteLeftMm, noteWidthMm, type NoteFlow } from '../../platform/printing/flowing-sheets.js';
import { say } from '../../platform/sentences/sentences.js';
import { gramsText } from '../weight-text.js';
import type { PrintedHours, WeightReportFacts } from './weight-report.facts.js';

const tallMm = 40;
const headMm = 3;
const footMm = 11;
const leftMm = noteLeftMm + 24;
const widthMm = noteWidthMm - 24 - 36;
const sizePoints = 7.5;
/** Names of lines stay so far apart, however near the lines are. */
const rowMm = 3.6;
/** The law's line is thick and whole, as in the histogram; control limits are thin and dashed, the centre thin and whole. */
const lawMm = 0.9;
const thinMm = 0.2;
/** Clocks beneath need so much room each. */
const clockMm = 10;
const mostMarkMm = 1.2;

/** The means of the hours between their control limits, with the nominal quantity; what it shows stands beneath in words. */
export function drawHours(flow: NoteFlow, { hourChart, hours }: WeightReportFacts): void {
  if (hourChart === undefined || hours.length === 0) return;
  if (hourChart === null) {
    flow.paragraph(say('run-weights-one-hour'), { quiet: true });
    return;
  }
  flow.need(headMm + tallMm + footMm + 8);
  flow.yMm += 2;
  flow.line(say('weights-hours'), { bold: true });
  const drawn = placesOf(hourChart, flow.yMm + headMm);
  lawLine(flow, hourChart, drawn);
  controlLines(flow, hourChart, drawn);
  means(flow, hourChart, drawn);
  clocks(flow, hourChart, drawn);
  flow.yMm = drawn.bottomMm + footMm;
  flow.paragraph(say('weight-report-hours-key'), { sizePoints, quiet: true });
  for (const text of hourChart.says) flow.paragraph(text, { sizePoints: 8 });
  flow.yMm += 1;
}

interface Drawn {
  readonly x: (place: number) => number;
  readonly y: (micrograms: number) => number;
  readonly stepMm: number;
  readonly bottomMm: number;
}

function placesOf({ nominal, lower, upper, points }: PrintedHours, topMm: number): Drawn {
  const ends = [nominal, lower, upper, ...points.map(({ value }) => value)];
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  const margin = Math.max(1, high - low) * 0.05;
  const stepMm = widthMm / points.length;
  return {
    x: (place) => leftMm + (place + 0.5) * stepMm,
    y: (micrograms) => topMm + ((high + margin - micrograms) / (high - low + 2 * margin)) * tallMm,
    ...{ stepMm, bottomMm: topMm + tallMm },
  };
}

function lawLine(flow: NoteFlow, { nominal }: PrintedHours, { y }: Drawn): void {
  const at = y(nominal);
  flow.page.rule({ xMm: leftMm, yMm: at }, { xMm: leftMm + widthMm, yMm: at }, lawMm);
  const place = { xMm: noteLeftMm, widthMm: leftMm - noteLeftMm - 2, sizePoints, align: 'right' } as const;
  flow.page.text(say('weights-nominal'), { ...place, yMm: at - rowMm, bold: true });
  flow.page.text(`${gramsText(nominal / 1000)} g`, { ...place, yMm: at });
}

function controlLines(flow: NoteFlow, { centre, lower, upper }: PrintedHours, { y }: Drawn): void {
  const lines = [
    { name: say('weights-upper'), micrograms: upper, nameMm: Math.min(y(upper), y(centre) - rowMm), dashMm: 1.2 },
    { name: say('weights-centre'), micrograms: centre, nameMm: y(centre) },
    { name: say('weights-lower'), micrograms: lower, nameMm: Math.max(y(lower), y(centre) + rowMm), dashMm: 1.2 },
  ];
  for (const { name, micrograms, nameMm, ...dash } of lines) {
    const [from, until] = [
      [leftMm, y(micrograms)],
      [leftMm + widthMm, y(micrograms)],
    ] as const;
    flow.page.trail([from, until], { lineMm: thinMm, ...dash });
    const place = { xMm: leftMm + widthMm + 2, yMm: nameMm - rowMm / 2, widthMm: 34, sizePoints };
    flow.page.text(`${name} ${gramsText(micrograms / 1000, 2)} g`, place);
  }
}

function means(flow: NoteFlow, { points }: PrintedHours, { x, y, stepMm }: Drawn): void {
  flow.page.trail(
    points.map(({ value }, place) => [x(place), y(value)] as const),
    { lineMm: thinMm },
  );
  const halfMm = Math.min(mostMarkMm, stepMm * 0.4);
  points.forEach(({ value, mark }, place) => {
    const [xMm, yMm] = [x(place), y(value)];
    if (mark === 'within') flow.page.circle({ xMm, yMm, radiusMm: halfMm * 0.8 }, { fillGrey: 1, lineMm: thinMm });
    else flow.page.shape(mark === 'signal' ? square(xMm, yMm, halfMm) : diamond(xMm, yMm, halfMm), { fillGrey: 0 });
  });
}

type Corners = readonly (readonly [xMm: number, yMm: number])[];

function square(xMm: number, yMm: number, halfMm: number): Corners {
  return [
    [xMm - halfMm, yMm - halfMm],
    [xMm + halfMm, yMm - halfMm],
    [xMm + halfMm, yMm + halfMm],
    [xMm - halfMm, yMm + halfMm],
  ];
}

function diamond(xMm: number, yMm: number, halfMm: number): Corners {
  const reachMm = halfMm * 1.5;
  return [
    [xMm, yMm - reachMm],
    [xMm + reachMm, yMm],
    [xMm, yMm + reachMm],
    [xMm - reachMm, yMm],
  ];
}

/** The clock beneath as many hours as there is room for, and the day where it begins. */
function clocks(flow: NoteFlow, { points }: PrintedHours, { x, stepMm, bottomMm }: Drawn): void {
  const every = Math.ceil(clockMm / stepMm);
  let dayEndsMm = 0;
  points.forEach(({ clock, day }, place) => {
    const at = x(place);
    if (place % every === 0) {
      flow.page.rule({ xMm: at, yMm: bottomMm }, { xMm: at, yMm: bottomMm + 1 }, thinMm);
      flow.page.text(clock, { xMm: at - 8, yMm: bottomMm + 1.5, widthMm: 16, sizePoints, align: 'centre' });
    }
    if (day === null || at < dayEndsMm) return;
    flow.page.text(day, { xMm: at - 4, yMm: bottomMm + 5, widthMm: 30, sizePoints, quiet: true });
    dayEndsMm = at + 22;
  });
}
