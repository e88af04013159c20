import { format } from 'prettier';
import type { BoundsRow, LikelyRow, WidthRow } from './measure-bounds.js';
import type { MistakeTable } from './measure-mistakes.js';
import type { Spread } from './spread.js';

/** The page of docs/accuracy.md. */
export function accuracyPage(
  plantCount: number,
  rows: readonly BoundsRow[],
  mistakes: readonly MistakeTable[],
): Promise<string> {
  const questions = rows.reduce((sum, { questionCount }) => sum + questionCount, 0);
  const breaches = rows.reduce((sum, { breachCount }) => sum + breachCount, 0);
  const text = [
    introduction(plantCount),
    `## Least ≤ truth ≤ most\n`,
    `${whole(questions)} questions (one bag in one target), all rows below together: **${whole(breaches)} untrue**.\n`,
    widthTable('pallet', rows),
    widthTable('printed minutes', rows),
    `## The likely amount\n`,
    likelyText,
    likelyTable('no fault', rows[0]?.likely ?? []),
    likelyTable('all faults', rows.at(-1)?.likely ?? []),
    `## The level check\n`,
    levelText,
    ...mistakes.map(mistakeTable),
  ];
  return format(text.join('\n'), { parser: 'markdown', printWidth: 120 });
}

function introduction(plantCount: number): string {
  return `# How true, and how narrow

\`npm run accuracy:write\` writes this page; the same program gives the same page.

A simulator (\`test/truth/\`) with its own physics plays ${plantCount} plants, seeds 0 to ${plantCount - 1}: one hopper of 1.6 to 3.4 t over one or two lines, two periods of some twenty bags of 1 t with a proven empty between them. It knows where each gram went: by turns under mass flow, under mixing, and in a funnel that lets the core through first and keeps a dead zone at its wall. It knows nothing of the bounds. All of it is invented; a real plant’s widths depend on its hopper, its pallets and its counts.

The records of each plant are written down without a fault, with one kind of fault, and with all of them. A fault is what people and devices may do without telling anything untrue:

- **scales**: bags within ± 1.03 kg, rejects within ± 20 g, the mean of the packs within ± 3 g;
- **late tips**: scanned up to 30 minutes late, in half of the plants in batches;
- **coder**: its clock is off by up to 5 minutes, and nobody knows by how much;
- **sparse counts**: by hand where a pallet is full, instead of every minute;
- **residues**: up to 45 kg stay inside at a proven empty, and up to 90 kg at the start, known within two fifths.
`;
}

const likelyText = `The error of a pallet is the share of its sugar that the model does not lay to the right bag. A model that describes how the hopper truly flows is *matched* (first in, first out to mass flow, pour and drain to mixing); the others show what a wrong choice costs. No model describes the funnel, and none of the true hoppers has the three zones. Even first in, first out under mass flow is not always right: now and then two bags hang and drain at once, and of packs counted in one minute the order is not known. Least and most rest on no model.
`;

const levelText = `One mistake is made in one period of each plant, and the whole period is checked, its proven empty included. *Alone*: the true kind fits best. *Tied*: it is among those that are said to fit equally (a tip that nobody entered and one entered at another hopper always are, while nobody looks there; so are packs that nobody counted last of all and an empty that was none). *Another*: the records are found impossible, but another kind is put first, or no single mistake explains all. Kilograms claimed are the least that the mistake must come to, or what the tip holds where it is named. The delay runs from the mistake to the record where it shows; a wrong tare of 10 to 45 kg, and a late tip that neither starves nor overfills the hopper, mostly stay below what the scales’ limits explain, and are not claimed.
`;

function mistakeTable({ faults, rows, cleanShifts, falseAlarms }: MistakeTable): string {
  const lines = rows.map((row) => {
    const shares = [row.foundShare, row.aloneShare, row.tiedShare, row.otherShare].map(percent);
    const delay = [row.delayMinutes.median, row.delayMinutes.mostBelow, row.delayMinutes.worst].map(minutes).join(', ');
    const names = `${row.rightNames}, ${row.wrongNames}`;
    const claimed = Number.isNaN(row.claimedShare.median) ? '' : percent(row.claimedShare.median);
    return `| ${[row.name, row.madeCount, ...shares, names, claimed, delay].join(' | ')} |`;
  });
  return `### Faults: ${faultName(faults)}

False alarms per 100 clean shifts: **${((falseAlarms * 100) / cleanShifts).toFixed(1)}** (${falseAlarms} of ${cleanShifts}).

| mistake | made | found | alone | tied | another | named right, wrong | kilograms claimed, median | delay in minutes: median, 95 % below, worst |
| --- | --- | --- | --- | --- | --- | --- | --- | --- |
${lines.join('\n')}
`;
}

function minutes(value: number): string {
  return Number.isNaN(value) ? 'none' : value.toFixed(0);
}

function widthTable(kind: WidthRow['kind'], rows: readonly BoundsRow[]): string {
  const lines = rows.map(({ faults, widths, falseAlarms }) => {
    const row = widths.find((one) => one.kind === kind);
    if (row === undefined) throw new RangeError(`no widths of ${kind}`);
    const { width, sureShare, possibleCount, trueCount } = row;
    const name = faultName(faults);
    return `| ${name} | ${percent(width.median)} | ${percent(width.worst)} | ${percent(sureShare)} | ${possibleCount.toFixed(1)} | ${trueCount.toFixed(1)} | ${falseAlarms} |`;
  });
  return `### ${kind === 'pallet' ? 'A bag in a pallet' : 'A bag in the packs of some printed minutes'}

Most less least, as a share of the bag, of bags of which at least a hundredth truly is there; how many of those are said to be *sure*; bags that a target may hold, and those it does; true records that were said to contradict each other.

| faults | median width | worst width | sure | possible bags | true bags | false alarms |
| --- | --- | --- | --- | --- | --- | --- |
${lines.join('\n')}
`;
}

function faultName(faults: BoundsRow['faults']): string {
  if (faults.length === 0) return 'none';
  return faults.length === 1 ? (faults[0] ?? '') : 'all';
}

function likelyTable(name: string, rows: readonly LikelyRow[]): string {
  const flows = [...new Set(rows.map(({ flow }) => flow))];
  const lines = [...new Set(rows.map(({ model }) => model))].map((model) => {
    const cells = flows.map((flow) => spreadText(rows.find((row) => row.model === model && row.flow === flow)?.error));
    return `| ${model} | ${cells.join(' | ')} |`;
  });
  return `### ${name}: median, 95 % below, worst

| model, where the truth is | ${flows.join(' | ')} |
| --- | ${flows.map(() => '---').join(' | ')} |
${lines.join('\n')}
`;
}

function spreadText(spread: Spread | undefined): string {
  if (spread === undefined) return '';
  return [spread.median, spread.mostBelow, spread.worst].map(percent).join(', ');
}

function percent(share: number): string {
  return `${(share * 100).toFixed(1)} %`;
}

function whole(count: number): string {
  return String(count).replace(/\B(?=(\d{3})+$)/g, ' ');
}
