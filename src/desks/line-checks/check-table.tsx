import type { VNode } from 'preact';
import type { LineCheckRow } from '../../line-checks/line-checks.js';
import { say } from '../../platform/sentences/sentences.js';
import { Table } from '../../platform/web/kit/table.js';
import { localText } from '../../platform/web/local-text.js';

interface CheckTableProps {
  readonly caption: string;
  readonly checks: readonly LineCheckRow[];
  /** Who made each, by its id. */
  readonly by: ReadonlyMap<string, string>;
  readonly timeZone: string;
  readonly empty: string;
}

/** Checks as they were made, each with its result and who made it. */
export function CheckTable({ caption, checks, by, timeZone, empty }: CheckTableProps): VNode {
  return (
    <Table
      caption={caption}
      columns={[
        { head: say('check-when') },
        { head: say('check-what') },
        { head: say('check-line-word') },
        { head: say('check-result') },
        { head: say('check-by') },
        { head: say('check-done-at-once') },
      ]}
      rows={checks.map((check) => ({
        key: check.id,
        isLoud: !check.passed,
        cells: [
          <a href={`/checks/${check.id}`}>{localText(check.occurredAt, timeZone)}</a>,
          `${check.station} · ${say(`check-kind-${check.kind}`)}`,
          check.lineName,
          resultText(check),
          by.get(check.id) ?? '',
          check.action === null ? '' : say(`check-action-${check.action}`),
        ],
      }))}
      empty={empty}
    />
  );
}

/** Passed or failed, by shape and word. */
export function resultText({ passed }: Pick<LineCheckRow, 'passed'>): string {
  return passed ? `\u25cb ${say('check-passed')}` : `\u25a0 ${say('check-failed')}`;
}
