import type { VNode } from 'preact';
import { westernElectricRules, type ChartRuleName } from '../../core/control-chart/chart-rules.js';
import { standardized, type ControlChart } from '../../core/control-chart/control-chart.js';
import { cumulativeSums, shiftedMean } from '../../core/control-chart/cumulative-sums.js';
import { begunSignals, findSignals, type Signal } from '../../core/control-chart/find-signals.js';
import { meansAndDeviations } from '../../core/control-chart/means-chart.js';
import type { Subgroup } from '../../core/weight-blocks/subgroups-of-weights.js';
import { say } from '../../platform/sentences/sentences.js';
import { localText } from '../../platform/web/local-text.js';
import { MeansPicture, type ChartEvent } from '../means-picture.js';
import { gramsText } from '../weight-text.js';
import type { SubgroupsOfRun } from './single-weights.js';

/** Fewer subgroups than this make limits that are themselves uncertain: 20 to 25 are customary. */
const enoughSubgroups = 20;
/** Signals that are said in words; all of them stand in the table. */
const mostSaid = 3;
/** Half a standard deviation, and five: an advice for shifts of about one (Montgomery and Runger, p. 637). */
const sumPlan = { target: 0, allowance: 0.5, decision: 5, headStart: 0 };

interface ControlChartsProps {
  readonly charted: SubgroupsOfRun;
  readonly events: readonly ChartEvent[];
  readonly headCount: number;
  readonly nominalMilligrams: number;
  readonly timeZone: string;
}

/** The means of subgroups with what happened beneath them, and how far packs of each lie apart. */
export function ControlChartsOfRun(props: ControlChartsProps): VNode {
  const { charted, events, nominalMilligrams, timeZone } = props;
  const { subgroups } = charted;
  if (subgroups.length < 2) return <p class="quiet">{say('run-weights-no-subgroups')}</p>;
  const { means, spreads } = meansAndDeviations(subgroups);
  const intervals = subgroups.map((subgroup) => ({ at: beginOf(subgroup), packCount: subgroup.count }));
  const signals = findSignals(standardized(means), westernElectricRules);
  // The other rules were made for limits that are alike on both sides.
  const spreadSignals = beyondOf(spreads);
  return (
    <>
      <Signals signals={signals} subgroups={subgroups} timeZone={timeZone} />
      <p class="quiet">{shiftText(means, subgroups, timeZone)}</p>
      <p class="quiet">{planText(props)}</p>
      <MeansPicture of={{ figure: 'means', chart: means, intervals, signals, events, nominalMilligrams, timeZone }} />
      <h3>{say('run-weights-spread')}</h3>
      <MeansPicture
        of={{
          ...{ figure: 'deviations', chart: spreads, intervals, signals: spreadSignals },
          ...{ events: null, nominalMilligrams: null, timeZone },
        }}
      />
    </>
  );
}

function beginOf({ atCentiseconds }: Subgroup): string {
  return new Date(atCentiseconds * 10).toISOString();
}

function beyondOf({ points }: ControlChart): readonly Signal<ChartRuleName>[] {
  return points.flatMap(({ value, lower, upper }, at) =>
    value < lower || value > upper ? [{ rule: 'western-electric-1', at, restsOn: [at] }] : [],
  );
}

interface SignalsProps {
  readonly signals: readonly Signal<ChartRuleName>[];
  readonly subgroups: readonly Subgroup[];
  readonly timeZone: string;
}

/** The latest signals, each by its rule; one that goes on is said once, from when it showed first. */
function Signals({ signals, subgroups, timeZone }: SignalsProps): VNode {
  const begun = begunSignals(signals);
  const said = begun.slice(-mostSaid).reverse();
  if (said.length === 0) return <p>{say('run-weights-no-signal')}</p>;
  return (
    <>
      {said.map(({ rule, at }) => (
        <p key={`${rule} ${at}`} class="sentence">
          {say('run-weights-signal', { at: atText(subgroups[at], timeZone), rule: say(`chart-rule-${rule}`) })}
        </p>
      ))}
      {begun.length > mostSaid ? (
        <p class="quiet">{say('run-weights-more-signals', { count: begun.length - mostSaid })}</p>
      ) : null}
    </>
  );
}

/** What the cumulative sum finds: small shifts that last, which no single mean shows. */
function shiftText(means: ControlChart, subgroups: readonly Subgroup[], timeZone: string): string {
  const plan = { allowance: sumPlan.allowance, decision: sumPlan.decision };
  const sums = cumulativeSums(standardized(means), sumPlan);
  const at = sums.findIndex(({ signal }) => signal !== null);
  const found = sums[at];
  if (found === undefined) return say('run-weights-sum-quiet', plan);
  const since = at - (found.signal === 'high' ? found.highCount : found.lowCount) + 1;
  const shift = (shiftedMean(found, sumPlan) ?? 0) * (means.points[at]?.sigma ?? 0);
  return say(`run-weights-sum-${found.signal ?? 'high'}`, {
    ...plan,
    at: atText(subgroups[at], timeZone),
    since: atText(subgroups[since], timeZone),
    grams: gramsText(means.centre + shift),
  });
}

function atText(subgroup: Subgroup | undefined, timeZone: string): string {
  return subgroup === undefined ? '–' : localText(beginOf(subgroup), timeZone);
}

function planText({ charted, headCount }: ControlChartsProps): string {
  const { size, everyMinutes, subgroups } = charted;
  return [
    say('run-weights-subgroup', { size, minutes: everyMinutes }),
    ...(headCount > 1 ? [say('run-weights-subgroup-heads', { heads: headCount })] : []),
    say('run-weights-limits-own'),
    ...(subgroups.length < enoughSubgroups ? [say('run-weights-few-subgroups', { count: subgroups.length })] : []),
  ].join(' ');
}
