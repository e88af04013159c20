import type { VNode } from 'preact';
import { HoldLink } from '../disposition/hold-link.js';
import { mayDo } from '../platform/actor.js';
import { say } from '../platform/sentences/sentences.js';
import { ActLink } from '../platform/web/kit/act.js';
import { Figures } from '../platform/web/kit/figures.js';
import { localText } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import { modelText } from './flow-text.js';
import { ExitTable, TipTable } from './hopper-tables.js';
import type { PeriodView } from './hopper-views.js';
import { LevelFindings } from './level-findings.js';
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
      <Figures
        of={[
          { label: say('period-from'), value: localText(period.startedAt, timeZone) },
          {
            label: say('period-until'),
            value: period.endedAt === null ? say('period-goes-on') : localText(period.endedAt, timeZone),
          },
          { label: say('period-began-with'), value: mass(period.residueGrams) },
          { label: say('period-residue'), value: period.endResidueGrams === null ? '–' : mass(period.endResidueGrams) },
        ]}
      />
      <p>{say(period.previousPeriodId === null ? 'period-thread-cut' : 'period-thread-goes-on')}</p>
      <p class="quiet">
        {say('hopper-likely-by', { model: modelText(view.chosen), permille: hopper.likelyPermille })}{' '}
        <a href={`/hoppers/${hopper.id}/flow`}>{say('hopper-flow-link')}</a>
      </p>
      <div class="acts">
        <ActLink href={`/hoppers/${hopper.id}`} says={`${hopper.code} · ${hopper.name}`} />
        <HoldLink viewer={viewer} kind="hopper-period" id={period.id} />
        {period.endedAt !== null && mayDo(viewer.actor.roles, 'prove-empty') ? (
          <ActLink href={`/hopper-periods/${period.id}/correct-empty`} says={say('period-correct-empty')} />
        ) : null}
      </div>
      <LevelFindings view={view} timeZone={timeZone} />
      <TipTable tips={view.tips} viewer={viewer} />
      <ExitTable view={view} viewer={viewer} />
    </Shell>
  );
}
