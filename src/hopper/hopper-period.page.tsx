import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
import { localText } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import { ExitTable, Findings, TipTable } from './hopper-tables.js';
import type { PeriodView } from './hopper-views.js';
import { mass } from './level-text.js';

interface HopperPeriodProps {
  readonly viewer: Viewer;
  readonly view: PeriodView;
}

/** One hopper period, from one proven empty to the next. */
export function hopperPeriodPage({ viewer, view }: HopperPeriodProps): VNode {
  const { hopper, period } = view;
  const { timeZone } = viewer;
  return (
    <Shell title={say('period-title', { hopper: hopper.code, number: period.number })} viewer={viewer}>
      <dl class="figures">
        <div>
          <dt>{say('period-from')}</dt>
          <dd>{localText(period.startedAt, timeZone)}</dd>
        </div>
        <div>
          <dt>{say('period-until')}</dt>
          <dd>{period.endedAt === null ? say('period-goes-on') : localText(period.endedAt, timeZone)}</dd>
        </div>
        <div>
          <dt>{say('period-began-with')}</dt>
          <dd>{mass(period.residueGrams)}</dd>
        </div>
        <div>
          <dt>{say('period-residue')}</dt>
          <dd>{period.endResidueGrams === null ? '–' : mass(period.endResidueGrams)}</dd>
        </div>
      </dl>
      <p>{say(period.previousPeriodId === null ? 'period-thread-cut' : 'period-thread-goes-on')}</p>
      <p>
        <a href={`/hoppers/${hopper.id}`}>{`${hopper.code} · ${hopper.name}`}</a>
      </p>
      <Findings level={view.level} timeZone={timeZone} />
      <TipTable tips={view.tips} timeZone={timeZone} />
      <ExitTable view={view} timeZone={timeZone} />
    </Shell>
  );
}
