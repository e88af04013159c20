import type { VNode } from 'preact';
import type { CountLine, RunLine } from '../../core/average-quantity/judge-run.js';
import { ruleSetOf } from '../../core/average-quantity/rule-sets.js';
import { say } from '../../platform/sentences/sentences.js';
import { countText } from '../../platform/web/figures-text.js';
import { localText } from '../../platform/web/local-text.js';
import { MeansPicture, type ChartEvent } from '../means-picture.js';
import { WeightHistogram, type HistogramFacts } from '../weight-histogram.js';
import { gramsText } from '../weight-text.js';
import { chartOfHours, enoughHours } from './hours-chart.js';
import type { MarketVerdict, RunWeights, Weighed } from './run-weights.js';

interface HistogramProps {
  readonly of: RunWeights;
  readonly weighed: Weighed;
  /** The market that is looked at first, then the others. */
  readonly verdicts: readonly MarketVerdict[];
}

/** The weights as bars with the limits of the first rules that count packs by these limits. */
export function HistogramOfRun({ of, weighed, verdicts }: HistogramProps): VNode {
  const limits = limitsBy(of, verdicts);
  if (limits === null) return <p class="quiet">{say('run-weights-no-limits')}</p>;
  const { nominalMilligrams } = of.yardstick;
  return (
    <>
      <p class="quiet">{say('run-weights-limits-by', { law: limits.law })}</p>
      <WeightHistogram
        of={{
          bins: weighed.bins,
          packCount: of.weighedPackCount,
          meanMilligrams: nominalMilligrams + weighed.meanErrorMicrograms / 1000,
          nominalMilligrams,
          t1: limits.t1,
          t2: limits.t2,
        }}
      />
      {weighed.isBeyondBins ? (
        <p class="quiet">
          {say('run-weights-beyond-bins', {
            smallest: gramsText(weighed.smallestMilligrams),
            largest: gramsText(weighed.largestMilligrams),
          })}
        </p>
      ) : null}
    </>
  );
}

function limitsBy(
  { yardstick: { t1Milligrams, t2Milligrams } }: RunWeights,
  verdicts: readonly MarketVerdict[],
): (Pick<HistogramFacts, 't1' | 't2'> & { readonly law: string }) | null {
  for (const { ruleSet, lines } of verdicts.flatMap(({ ruleSets }) => ruleSets)) {
    const t1 = limitIn(lines, t1Milligrams);
    const t2 = limitIn(lines, t2Milligrams);
    if (t1 !== null && t2 !== null) return { t1, t2, law: ruleSetOf(ruleSet).title };
  }
  return null;
}

function limitIn(lines: readonly RunLine[], milligrams: number | null): HistogramFacts['t1'] | null {
  const line = lines.find((each): each is CountLine => each.rule !== 'mean' && each.belowMilligrams === milligrams);
  if (milligrams === null || line === undefined || line.shortCount === null) return null;
  return { milligrams, beyondCount: line.shortCount, permittedCount: line.allowedCount };
}

/** The means of the hours as single figures. */
export function MeansOfRun({
  of,
  events,
  timeZone,
}: {
  readonly of: RunWeights;
  /** Null: the control chart says what happened. */
  readonly events: readonly ChartEvent[] | null;
  readonly timeZone: string;
}): VNode {
  const { hours, yardstick } = of;
  const { nominalMilligrams } = yardstick;
  const drawn = chartOfHours(hours, nominalMilligrams);
  if (drawn === null) return <p class="quiet">{say('run-weights-one-hour')}</p>;
  return (
    <>
      <p class="quiet">
        {say('run-weights-means-says')}{' '}
        {hours.length < enoughHours ? say('run-weights-few-hours', { count: hours.length }) : null}
      </p>
      <MeansPicture
        of={{
          figure: 'hours',
          ...drawn,
          intervals: hours.map(({ hourAt, packCount }) => ({ at: hourAt, packCount })),
          ...{ events, nominalMilligrams, timeZone },
        }}
      />
    </>
  );
}

/** Where nothing was weighed: what is known from a hand sample, and what to do. */
export function NothingWeighed({ of, timeZone }: { readonly of: RunWeights; readonly timeZone: string }): VNode {
  const { basis, samplePackCount, meanMilligrams, weighedAt } = of.meanNet;
  return (
    <>
      <p class="caution">{say('run-weights-nothing-do')}</p>
      <p>
        {basis === 'assumed' || weighedAt === null
          ? say('run-weights-no-sample')
          : say('run-weights-sample', {
              packs: countText(samplePackCount),
              grams: gramsText(meanMilligrams),
              at: localText(weighedAt, timeZone),
            })}
      </p>
    </>
  );
}
