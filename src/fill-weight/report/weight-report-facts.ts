import { zeroOrNoHead } from '../../core/weight-blocks/weight-columns.js';
import { lotRanges } from '../../packing/packing-runs.js';
import { namesOf } from '../../people/people.js';
import type { Instant } from '../../platform/clock.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { inPaperLanguage } from '../../platform/printing/paper-language.js';
import { printedTime, thousands } from '../../platform/printing/printed-figures.js';
import { say } from '../../platform/sentences/sentences.js';
import type { SiteRow } from '../../plant/plant-rows.js';
import { formatOf } from '../../plant/plant-facts.js';
import type { UnreadableWeights } from '../kept/kept-weights.js';
import { saleOfFormat, type SaleOfFormat } from '../format-sales/format-sales.js';
import { marketsText } from '../format-sales/sale-texts.js';
import { packWeighersNamed } from '../pack-weighers.js';
import { shownMarkets, type JudgedMarket } from '../run-weights/judged-markets.js';
import type { MarketVerdict, RunWeights } from '../run-weights/run-weights.js';
import { damagedCells, unreadableTexts } from '../run-weights/unreadable-weights.js';
import { verdictSays } from '../run-weights/verdict-line.js';
import { flooredMilligrams, outsideText, runVerdictTexts } from '../verdict-texts.js';
import { gramsText } from '../weight-text.js';
import { fitnessTexts } from './fitness-texts.js';
import { printedHours } from './printed-hours.js';
import { mostListed, shortPacksOf, tareChangesOf, type TareChangeEntry } from './report-readings.js';
import { settingsOfRun, settingTexts } from './settings-of-run.js';
import type { PrintedMarket, WeightReportFacts } from './weight-report.facts.js';

/** What a report is written from. */
export interface ReportDraft {
  readonly site: SiteRow;
  readonly weights: RunWeights;
  readonly unreadable: readonly UnreadableWeights[];
  readonly issuedAt: Instant;
  readonly issuedBy: string | null;
}

/**
 * Markets whose rules stand line by line where nobody said where the format is sold; of the others one line is printed.
 */
const usuallyInFull: readonly JudgedMarket[] = ['eu', 'us'];

/** What the report of a run's weights says, in the language of the site's papers. */
export async function weightReportFacts(from: ReadFrom, draft: ReportDraft): Promise<WeightReportFacts> {
  const { site, weights, issuedBy } = draft;
  const { run } = weights;
  const language = site.paperLanguage;
  const names = issuedBy === null ? null : await namesOf(from, [issuedBy]);
  const format = await formatOf(from, run.formatId);
  const lots = await lotRanges(from, run.id);
  const weighers = await packWeighersNamed(
    from,
    weights.weighers.map(({ weigherId }) => weigherId),
  );
  const short = await shortPacksOf(from, run.id);
  const changes = await tareChangesOf(from, run);
  const sale = await saleOfFormat(from, run.formatId, run.startedAt);
  const settings = await settingsOfRun(from, { run, untilAt: run.closedAt ?? draft.issuedAt });
  const local = (at: Instant): string => printedTime(at, site.timeZone, language);
  const written = (): WeightReportFacts => ({
    ...{ language, siteName: site.name, gln: site.gln, runNumber: run.number, isOpen: run.closedAt === null },
    issuedAtLocal: local(draft.issuedAt),
    issuedBy: names?.get(issuedBy ?? '') ?? null,
    verdict: verdictOf(weights, shownMarkets(null, sale)),
    about: [
      about('site', { site: site.name, gln: site.gln }),
      about('line', { line: `${run.lineCode} · ${run.lineName}` }),
      about('format', { name: run.formatName, gtin: run.gtin, grams: gramsText(run.nominalGrams * 1000, 0) }),
      { name: say('weight-report-sold'), says: soldText(sale) },
      about('lots', { lots: [...new Set(lots.map(({ code }) => code))].join(', ') || '–' }),
      about('times', { from: local(run.startedAt), until: run.closedAt === null ? '–' : local(run.closedAt) }),
      about('tare', { grams: thousands(format.packTareGrams) }),
      ...weighers.flatMap((weigher) =>
        fitnessTexts(weigher, run.nominalGrams * 1000).map((says) => ({ name: say('weight-report-scale'), says })),
      ),
    ],
    counts: countsOf(weights),
    markets: marketsOf(weights, sale?.markets ?? usuallyInFull),
    ...pictureOf(weights),
    hours: weights.hours.map((hour) => ({
      cells: [
        local(hour.hourAt),
        thousands(hour.packCount),
        gramsText(weights.yardstick.nominalMilligrams + hour.meanErrorMicrograms / 1000, 2),
        thousands(hour.beyondT1Count),
        thousands(hour.beyondT2Count),
      ],
    })),
    hourChart: printedHours(weights, site.timeZone),
    shortPacks: short.packs.map(({ weighedAt, sequence, head, netMilligrams }) => ({
      cells: [local(weighedAt), thousands(sequence), headText(head), gramsText(netMilligrams)],
    })),
    shortPackCount: short.count,
    settings: settingTexts(settings, local),
    tareCorrections: changes.map((change) => changeText(change, local)),
    unreadable: unreadableTexts(draft.unreadable),
    damagedBlocks: draft.unreadable
      .filter(({ reason }) => reason !== 'dropped')
      .slice(0, mostListed)
      .map((block) => ({ cells: withGap(damagedCells(block)) })),
  });
  return inPaperLanguage(written, language);
}

/** A narrow column parts a number on the right from a text on the left. */
function withGap(cells: readonly string[]): readonly string[] {
  return [...cells.slice(0, -1), '', ...cells.slice(-1)];
}

function about(what: string, facts: Record<string, string | null>): { readonly name: string; readonly says: string } {
  return { name: say(`weight-report-${what}`), says: say(`weight-report-${what}-says`, facts) };
}

/** Of each market in which the format is sold; where nothing was weighed they all say the same. */
function verdictOf(weights: RunWeights, markets: readonly JudgedMarket[]): string {
  const verdicts = markets.flatMap((market) => weights.verdicts.filter((verdict) => verdict.market === market));
  return [...new Set(verdicts.map((verdict) => verdictSays(verdict, weights)))].join(' ');
}

function soldText(sale: SaleOfFormat | null): string {
  if (sale === null) return say('weight-report-sold-not-said');
  return say('weight-report-sold-says', { markets: marketsText(sale.markets) });
}

function countsOf(weights: RunWeights): WeightReportFacts['counts'] {
  const { run, weighed } = weights;
  const count = (code: string, packs: number) => ({ name: say(code), says: thousands(packs) });
  const grams = (code: string, milligrams: number) => ({ name: say(code), says: `${gramsText(milligrams, 2)} g` });
  const rest =
    weighed === null
      ? []
      : [
          grams('weight-report-mean', run.nominalGrams * 1000 + flooredMilligrams(weighed.meanErrorMicrograms)),
          ...(weighed.standardDeviationMilligrams === null
            ? []
            : [grams('run-weights-deviation', weighed.standardDeviationMilligrams)]),
          grams('run-weights-lightest', weighed.smallestMilligrams),
          grams('run-weights-heaviest', weighed.largestMilligrams),
        ];
  return [
    count('run-weights-counted', run.packCount),
    count('run-weights-weighed', weights.weighedPackCount),
    count('run-weights-unweighed', weights.unweighedPackCount),
    count('weight-report-uncounted', weights.uncountedPackCount),
    count('run-weights-rejected', weights.rejectedPackCount),
    ...rest,
  ];
}

/** Those that stand in full first. */
function marketsOf(weights: RunWeights, inFull: readonly JudgedMarket[]): readonly PrintedMarket[] {
  const isInFull = (market: string): boolean => inFull.some((one) => one === market);
  const full = inFull.flatMap((market) => weights.verdicts.filter((verdict) => verdict.market === market));
  const others = weights.verdicts.filter(({ market }) => !isInFull(market));
  return [...full, ...others].map((verdict) => marketOf(verdict, { weights, isFull: isInFull(verdict.market) }));
}

function marketOf(
  verdict: MarketVerdict,
  { weights, isFull }: { readonly weights: RunWeights; readonly isFull: boolean },
): PrintedMarket {
  const texts = isFull && weights.weighed !== null ? runVerdictTexts(verdict) : [];
  return {
    market: say(`run-weights-market-${verdict.market}`),
    overall: overallOf(verdict),
    ruleSets: texts.map(({ title, lines }) => ({ title, rules: lines })),
  };
}

function overallOf({ overall, outside, ruleSets }: MarketVerdict): string {
  if (outside !== null) return outsideText(outside);
  const broken = ruleSets.flatMap(({ lines }) => lines.filter(({ verdict }) => verdict === 'broken'));
  const rules = [...new Set(broken.map(({ rule }) => say(`fill-rule-${rule}`)))].join(', ');
  return say(`weight-report-overall-${overall}`, { rules });
}

/** Bars and limits; the limits are those that the sums were counted by. */
function pictureOf({ weighed, yardstick }: RunWeights): Pick<WeightReportFacts, 'bins' | 'limits'> {
  if (weighed === null) return { bins: [], limits: null };
  const { nominalMilligrams: nominal, t1Milligrams: t1, t2Milligrams: t2 } = yardstick;
  return {
    bins: weighed.bins.map(({ from, until, count }) => ({ from, until, count })),
    limits: { nominal, t1, t2, mean: nominal + Math.floor(weighed.meanErrorMicrograms / 1000) },
  };
}

function changeText(change: TareChangeEntry, local: (at: Instant) => string): string {
  const { recordedAt, isWithdrawn, addedMilligrams, fromSequence, toSequence, packCount, reason } = change;
  return say(isWithdrawn ? 'weight-report-tare-withdrawn' : 'weight-report-tare-corrected', {
    at: local(recordedAt),
    grams: gramsText(addedMilligrams, 2),
    from: thousands(fromSequence),
    to: thousands(toSequence),
    packs: thousands(packCount),
    reason,
  });
}

function headText(head: number | null): string {
  if (head === null) return '–';
  return head === zeroOrNoHead ? say('weight-report-zero-or-no-head') : String(head);
}
