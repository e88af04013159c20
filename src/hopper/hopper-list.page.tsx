import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
import { Table } from '../platform/web/kit/table.js';
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
      <Table
        caption={say('hoppers-caption')}
        columns={[
          { head: say('hopper') },
          { head: say('hopper-level') },
          { head: say('hopper-capacity'), align: 'number' },
          { head: say('hopper-records') },
        ]}
        rows={hoppers.map(({ id, code, name, level }) => ({
          key: id,
          isLoud: level.findings.length > 0,
          cells: [
            <a href={`/hoppers/${id}`}>{`${code} · ${name}`}</a>,
            levelText(level),
            mass(level.capacityGrams),
            say(level.findings.length === 0 ? 'hopper-records-fit' : 'hopper-records-impossible'),
          ],
        }))}
      />
    </Shell>
  );
}
