import type { VNode } from 'preact';
import type { LotRow } from '../../packing/packing-run-rows.js';
import { say } from '../../platform/sentences/sentences.js';
import { Table } from '../../platform/web/kit/table.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';

interface LotChoiceProps {
  readonly viewer: Viewer;
  readonly code: string;
  readonly lots: readonly LotRow[];
}

/** Several lots begin with what was typed: one is chosen. */
export function lotChoicePage({ viewer, code, lots }: LotChoiceProps): VNode {
  return (
    <Shell title={say('lot-choice-title', { code })} viewer={viewer}>
      <Table
        caption={say('lot-choice-caption')}
        columns={[{ head: say('desk-lot'), align: 'code' }, { head: say('desk-format') }, { head: 'GTIN' }]}
        rows={lots.map((lot) => ({
          key: lot.id,
          cells: [
            <a key="lot" href={`/quality/lots/${lot.id}`}>
              {lot.code}
            </a>,
            lot.formatName,
            lot.gtin,
          ],
        }))}
      />
    </Shell>
  );
}
