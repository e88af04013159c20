import type { VNode } from 'preact';
import { mayDo } from '../platform/actor.js';
import { say } from '../platform/sentences/sentences.js';
import { Table } from '../platform/web/kit/table.js';
import { localText } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import { HopperCautions } from './hopper-cautions.js';
import { modelText } from './flow-text.js';
import { ExitTable, TipTable } from './hopper-tables.js';
import type { HopperView } from './hopper-views.js';
import { LevelFindings } from './level-findings.js';
import { levelText, mass } from './level-text.js';

interface HopperProps {
  readonly viewer: Viewer;
  readonly view: HopperView;
}

/** One hopper: what may be inside now, its level, and what went in and out since it was last proven empty. */
export function hopperPage({ viewer, view }: HopperProps): VNode {
  const { hopper, level, period } = view;
  const { timeZone } = viewer;
  return (
    <Shell title={`${hopper.code} · ${hopper.name}`} viewer={viewer}>
      <p class="sentence">{levelText(level)}</p>
      <p class="quiet">
        {level.asOfAt === null ? null : say('hopper-as-of', { at: localText(level.asOfAt, timeZone) })}{' '}
        {say('hopper-likely-by', {
          model: modelText(period?.chosen ?? null),
          permille: hopper.likelyPermille,
        })}{' '}
        <a href={`/hoppers/${hopper.id}/flow`}>{say('hopper-flow-link')}</a>
      </p>
      {period === null ? null : <LevelFindings view={period} timeZone={timeZone} />}
      <HopperCautions />
      <BagTable view={view} />
      {period === null ? null : <TipTable tips={period.tips} viewer={viewer} />}
      {period === null ? null : <ExitTable view={period} viewer={viewer} />}
      <PeriodTable view={view} viewer={viewer} />
    </Shell>
  );
}

function BagTable({ view }: { readonly view: HopperView }): VNode {
  return (
    <Table
      caption={say('hopper-bags', { count: view.bags.length })}
      columns={[
        { head: say('bulk-bag') },
        { head: say('hopper-least'), align: 'number' },
        { head: say('hopper-likely'), align: 'number' },
        { head: say('hopper-most'), align: 'number' },
        { head: say('hopper-word') },
      ]}
      rows={view.bags.map(({ bagId, leastGrams, likelyGrams, mostGrams, word }) => ({
        key: bagId,
        cells: [
          <a href={`/thread?code=${bagId}`}>{view.bagNumbers.get(bagId) ?? bagId}</a>,
          mass(leastGrams),
          mass(likelyGrams),
          mass(mostGrams),
          say(`link-${word}`),
        ],
      }))}
    />
  );
}

function PeriodTable({ view, viewer }: HopperProps): VNode {
  const { timeZone } = viewer;
  const mayCorrect = mayDo(viewer.actor.roles, 'prove-empty');
  // Only the last empty can be corrected: later periods rest on those before.
  const lastEnded = view.periods.find(({ endedAt }) => endedAt !== null);
  return (
    <Table
      caption={say('hopper-periods')}
      columns={[
        { head: say('period-number') },
        { head: say('period-from') },
        { head: say('period-until') },
        { head: say('period-residue'), align: 'number' },
        ...(mayCorrect ? [{ head: say('period-empty') }] : []),
      ]}
      rows={view.periods.map((period) => ({
        key: period.id,
        cells: [
          <a href={`/hopper-periods/${period.id}`}>{period.number}</a>,
          localText(period.startedAt, timeZone),
          period.endedAt === null ? say('period-goes-on') : localText(period.endedAt, timeZone),
          period.endResidueGrams === null ? '–' : mass(period.endResidueGrams),
          ...(mayCorrect ? [period.id === lastEnded?.id ? <EmptyCorrection periodId={period.id} /> : ''] : []),
        ],
      }))}
    />
  );
}

function EmptyCorrection({ periodId }: { readonly periodId: string }): VNode {
  return <a href={`/hopper-periods/${periodId}/correct-empty`}>{say('period-correct-empty')}</a>;
}
