import type { VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import { countText } from '../../platform/web/figures-text.js';
import { ActLink } from '../../platform/web/kit/act.js';
import { Figures } from '../../platform/web/kit/figures.js';
import { Live } from '../../platform/web/kit/live.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import { marketsText } from '../format-sales/sale-texts.js';
import { Silences, VerifiedLine } from '../silence/unverified-packs.js';
import { RulesByMarket, RulesOfMarket } from './rules-tables.js';
import { ControlChartsOfRun } from './control-charts.js';
import { HeadsOfRun } from './heads-table.js';
import type { RunSight } from './run-sights.js';
import { shownMarkets, type JudgedMarket } from './judged-markets.js';
import { Giveaway } from './giveaway.js';
import type { RunWeights } from './run-weights.js';
import { UnreadableOfRun } from './unreadable-weights.js';
import { verdictSays } from './verdict-line.js';
import { ReportsOfRun } from '../report/reports-of-run.js';
import { HistogramOfRun, MeansOfRun, NothingWeighed } from './weights-drawn.js';

interface RunWeightsProps {
  readonly viewer: Viewer;
  readonly sight: RunSight;
  /** Whose rules stand first; null: those of the markets in which the format is sold. */
  readonly chosen: JudgedMarket | null;
}

/** What the journal says that changes the page of a run that is open. */
const followed = [
  'receive-weights',
  'look-at-weighing',
  'count-packs',
  'correct-count',
  'close-run',
  'correct-tare',
  'withdraw-tare-correction',
  'weigh-hand-sample',
  'correct-hand-sample',
  'stop-line',
  'check-line',
  'change-setting',
  'correct-setting',
  'tip-bag',
];

/** Whether a run's packs are lawful, and what they give away. Of an open run it follows the weights as they come in. */
export function runWeightsPage({ viewer, sight, chosen }: RunWeightsProps): VNode {
  const { number, closedAt } = sight.weights.run;
  const shown = <Shown viewer={viewer} sight={sight} chosen={chosen} />;
  return (
    <Shell title={say('run-weights-title', { number })} viewer={viewer}>
      {closedAt === null ? (
        <Live id="run-weights" about={followed}>
          {shown}
        </Live>
      ) : (
        shown
      )}
    </Shell>
  );
}

function Shown({ viewer, sight, chosen }: RunWeightsProps): VNode {
  const { weights, sale } = sight;
  const { run, verdicts, weighed } = weights;
  const markets = shownMarkets(chosen, sale);
  const first = markets.flatMap((market) => verdicts.filter((verdict) => verdict.market === market));
  const others = verdicts.filter((verdict) => !first.includes(verdict));
  const sentences = [...new Set(first.map((verdict) => verdictSays(verdict, weights)))];
  return (
    <>
      {sentences.map((sentence) => (
        <p key={sentence} class="sentence">
          {sentence}
        </p>
      ))}
      <p class="quiet">
        {sale === null ? say('sale-of-run-not-said') : say('sale-of-run', { markets: marketsText(sale.markets) })}{' '}
        <a href="/set-up/sales">{say('sale-link')}</a>
      </p>
      {weighed === null ? <NothingWeighed of={weights} timeZone={viewer.timeZone} /> : null}
      <Verified of={weights} />
      <Counted of={weights} />
      <Silences silences={weights.silences} timeZone={viewer.timeZone} />
      <p class="caution">
        {say('fill-law-caution')} {say('run-weights-inspector')}
      </p>
      <div class="acts">
        <ActLink href={`/runs/${run.id}`} says={say('run-weights-back', { number: run.number })} />
        <ActLink href={`/runs/${run.id}/hand-samples`} says={say('run-weights-samples')} />
        <ActLink href={`/lines/${run.lineId}/fill`} says={say('line-fill-link', { line: run.lineName })} />
        <ActLink href={`/lines/${run.lineId}/settings`} says={say('setting-title', { line: run.lineName })} />
      </div>
      {weighed === null ? null : (
        <>
          <h2>{say('run-weights-rules')}</h2>
          {first.map((verdict) => (
            <RulesOfMarket key={verdict.market} verdict={verdict} />
          ))}
          <RulesByMarket verdicts={verdicts} path={`/runs/${run.id}/weights`} />
          <h2>{say('run-weights-giveaway')}</h2>
          <Giveaway of={weighed} sale={sale} timeZone={viewer.timeZone} />
          <h2>{say('run-weights-histogram')}</h2>
          <HistogramOfRun of={weights} weighed={weighed} verdicts={[...first, ...others]} />
          <Charts sight={sight} timeZone={viewer.timeZone} />
        </>
      )}
      <ReportsOfRun viewer={viewer} run={run} reports={sight.reports} />
    </>
  );
}

interface ChartsProps {
  readonly sight: RunSight;
  readonly timeZone: string;
}

/** What single weights say, as long as they are kept, and what the sums of hours say for ever. */
function Charts({ sight, timeZone }: ChartsProps): VNode {
  const { weights, single, heads, events } = sight;
  const { nominalMilligrams } = weights.yardstick;
  const { charted, unreadable } = single;
  const isCharted = charted !== null && charted.subgroups.length > 1;
  return (
    <>
      {charted === null ? null : (
        <>
          <h2>{say('run-weights-control')}</h2>
          <ControlChartsOfRun headCount={heads.length} {...{ charted, events, nominalMilligrams, timeZone }} />
        </>
      )}
      {heads.length === 0 ? null : (
        <>
          <h2>{say('run-weights-heads')}</h2>
          <HeadsOfRun {...{ heads, nominalMilligrams, untold: single.byHead }} />
        </>
      )}
      <h2>{say('run-weights-hours')}</h2>
      <MeansOfRun of={weights} events={isCharted ? null : events} timeZone={timeZone} />
      <UnreadableOfRun of={unreadable} />
    </>
  );
}

function Verified({ of }: { readonly of: RunWeights }): VNode {
  const { run, verifiedPackCount, unweighedPackCount, takenOutPackCount } = of;
  const counts = { countedPackCount: run.packCount, verifiedPackCount, takenOutPackCount };
  return <VerifiedLine of={{ ...counts, unverifiedPackCount: unweighedPackCount }} />;
}

/** What the verdict is about and what it is not about. */
function Counted({ of }: { readonly of: RunWeights }): VNode {
  const { run, weighers, weighedPackCount, rejectedPackCount, unweighedPackCount, uncountedPackCount } = of;
  const notes = [
    ...(run.closedAt === null ? [say('run-weights-open')] : []),
    ...(uncountedPackCount > 0 ? [say('run-weights-uncounted', { count: countText(uncountedPackCount) })] : []),
    ...(weighers.length > 1 ? [say('run-weights-several', { count: weighers.length })] : []),
  ];
  return (
    <>
      <Figures
        of={[
          { label: say('run-weights-counted'), value: countText(run.packCount) },
          { label: say('run-weights-weighed'), value: countText(weighedPackCount) },
          { label: say('run-weights-unweighed'), value: countText(unweighedPackCount) },
          { label: say('run-weights-rejected'), value: countText(rejectedPackCount) },
        ]}
      />
      {notes.map((note) => (
        <p key={note} class="quiet">
          {note}
        </p>
      ))}
    </>
  );
}
