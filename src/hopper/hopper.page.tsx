import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
import { localText } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import { HopperCautions } from './hopper-cautions.js';
import { ExitTable, Findings, TipTable } from './hopper-tables.js';
import type { HopperView } from './hopper-views.js';
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
        {say('hopper-model', { model: say(`flow-${hopper.flowModel}`), permille: hopper.likelyPermille })}
      </p>
      <Findings level={level} timeZone={timeZone} />
      <HopperCautions />
      <BagTable view={view} />
      {period === null ? null : <TipTable tips={period.tips} timeZone={timeZone} />}
      {period === null ? null : <ExitTable view={period} timeZone={timeZone} />}
      <PeriodTable view={view} timeZone={timeZone} />
    </Shell>
  );
}

function BagTable({ view }: { readonly view: HopperView }): VNode {
  const title = say('hopper-bags', { count: view.bags.length });
  return (
    <div class="table-wrap" tabIndex={0} role="region" aria-label={title}>
      <table>
        <caption>{title}</caption>
        <thead>
          <tr>
            <th scope="col">{say('bulk-bag')}</th>
            <th scope="col" class="number">
              {say('hopper-least')}
            </th>
            <th scope="col" class="number">
              {say('hopper-likely')}
            </th>
            <th scope="col" class="number">
              {say('hopper-most')}
            </th>
            <th scope="col">{say('hopper-word')}</th>
          </tr>
        </thead>
        <tbody>
          {view.bags.map(({ bagId, leastGrams, likelyGrams, mostGrams, word }) => (
            <tr key={bagId}>
              <th scope="row">
                <a href={`/thread?code=${bagId}`}>{view.bagNumbers.get(bagId) ?? bagId}</a>
              </th>
              <td class="number">{mass(leastGrams)}</td>
              <td class="number">{mass(likelyGrams)}</td>
              <td class="number">{mass(mostGrams)}</td>
              <td>{say(`link-${word}`)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function PeriodTable({ view, timeZone }: { readonly view: HopperView; readonly timeZone: string }): VNode {
  const title = say('hopper-periods');
  return (
    <div class="table-wrap" tabIndex={0} role="region" aria-label={title}>
      <table>
        <caption>{title}</caption>
        <thead>
          <tr>
            <th scope="col">{say('period-number')}</th>
            <th scope="col">{say('period-from')}</th>
            <th scope="col">{say('period-until')}</th>
            <th scope="col" class="number">
              {say('period-residue')}
            </th>
          </tr>
        </thead>
        <tbody>
          {view.periods.map((period) => (
            <tr key={period.id}>
              <th scope="row">
                <a href={`/hopper-periods/${period.id}`}>{period.number}</a>
              </th>
              <td>{localText(period.startedAt, timeZone)}</td>
              <td>{period.endedAt === null ? say('period-goes-on') : localText(period.endedAt, timeZone)}</td>
              <td class="number">{period.endResidueGrams === null ? '–' : mass(period.endResidueGrams)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
