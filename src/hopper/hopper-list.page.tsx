import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import type { HopperLevel } from './hopper-level.js';
import { HopperCautions } from './hopper-cautions.js';
import { levelText, mass } from './level-text.js';

interface HopperListProps {
  readonly viewer: Viewer;
  readonly hoppers: readonly {
    readonly id: string;
    readonly code: string;
    readonly name: string;
    readonly level: HopperLevel;
  }[];
}

/** All hoppers, each with what is inside by the records. */
export function hopperListPage({ viewer, hoppers }: HopperListProps): VNode {
  return (
    <Shell title={say('hoppers-title')} viewer={viewer}>
      <p class="quiet">{say('hoppers-says')}</p>
      <HopperCautions />
      <div class="table-wrap" tabIndex={0} role="region" aria-label={say('hoppers-title')}>
        <table>
          <caption>{say('hoppers-caption')}</caption>
          <thead>
            <tr>
              <th scope="col">{say('hopper')}</th>
              <th scope="col">{say('hopper-level')}</th>
              <th scope="col" class="number">
                {say('hopper-capacity')}
              </th>
              <th scope="col">{say('hopper-records')}</th>
            </tr>
          </thead>
          <tbody>
            {hoppers.map(({ id, code, name, level }) => (
              <tr key={id}>
                <th scope="row">
                  <a href={`/hoppers/${id}`}>{`${code} · ${name}`}</a>
                </th>
                <td>{levelText(level)}</td>
                <td class="number">{mass(level.capacityGrams)}</td>
                <td>{say(level.findings.length === 0 ? 'hopper-records-fit' : 'hopper-records-impossible')}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {hoppers.length === 0 ? <p>{say('nothing-here')}</p> : null}
    </Shell>
  );
}
