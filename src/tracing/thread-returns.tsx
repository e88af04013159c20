import type { VNode } from 'preact';
import type { ReturnedUnitRow } from '../dispatch/returns.js';
import { say } from '../platform/sentences/sentences.js';
import { countText } from '../platform/web/figures-text.js';
import { Table } from '../platform/web/kit/table.js';
import { localText } from '../platform/web/local-text.js';
import { threadLink } from './thread-text.js';

interface ReturnsProps {
  readonly returns: readonly ReturnedUnitRow[];
  readonly timeZone: string;
}

/** What of it came back from customers, and what became of that: it is no stock until quality says so. */
export function Returns({ returns, timeZone }: ReturnsProps): VNode | null {
  if (returns.length === 0) return null;
  return (
    <Table
      caption={say('thread-returns')}
      columns={[
        { head: say('thread-returned-unit'), align: 'code' },
        { head: say('thread-returned-packs'), align: 'number' },
        { head: say('thread-customer') },
        { head: say('thread-when') },
        { head: say('thread-returned-why') },
        { head: say('thread-returned-now') },
      ]}
      rows={returns.map((unit) => ({
        key: unit.id,
        cells: [
          <a key="unit" href={threadLink(unit.name)}>
            {unit.name}
          </a>,
          countText(unit.unitCount),
          unit.customerName,
          localText(unit.returnedAt, timeZone),
          say(`return-${unit.why}`),
          unit.fate === null
            ? say('thread-returned-waits', { place: unit.placeCode })
            : say(unit.fate === 'restock' ? 'fate-restock' : 'fate-destroy'),
        ],
      }))}
    />
  );
}
