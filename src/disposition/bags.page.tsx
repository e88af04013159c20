import type { ComponentChildren, VNode } from 'preact';
import { formatKilograms } from '../core/units/grams.js';
import { say } from '../platform/sentences/sentences.js';
import { Table } from '../platform/web/kit/table.js';
import { OlderEntries } from '../platform/web/older-entries.js';
import { localText } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import { StateMark } from '../platform/web/state-mark.js';
import type { StateWord } from './worst-state.js';

/** A bag as the list shows it. */
export interface BagLine {
  readonly id: string;
  readonly number: string;
  readonly state: StateWord;
  readonly isDoubtful: boolean;
  readonly status: string;
  readonly netGrams: number | null;
  readonly remainingGrams: number;
  readonly filledAt: string | null;
}

interface BagsProps {
  readonly viewer: Viewer;
  readonly bags: readonly BagLine[];
  readonly next: string | null;
}

/** All bulk bags, latest first. */
export function bagsPage({ viewer, bags, next }: BagsProps): VNode {
  return (
    <Shell title={say('bags-title')} viewer={viewer}>
      <p class="caution">{say('caution-hanging-bags')}</p>
      <Table
        caption={say('bags-caption')}
        columns={[
          { head: say('bags-column-bag') },
          { head: say('bags-column-state') },
          { head: say('bags-column-where') },
          { head: say('bags-column-net'), align: 'number' },
          { head: say('bags-column-left'), align: 'number' },
          { head: say('bags-column-filled') },
        ]}
        rows={bags.map((bag) => ({ key: bag.id, cells: cellsOf(bag, viewer.timeZone) }))}
      />
      <OlderEntries path="/bags" older={next} />
    </Shell>
  );
}

function cellsOf(bag: BagLine, timeZone: string): readonly ComponentChildren[] {
  return [
    <a href={`/bags/${bag.id}`}>{bag.number}</a>,
    <>
      <StateMark state={bag.state} />
      {bag.isDoubtful ? <StateMark state="doubtful" /> : null}
    </>,
    say(`bag-status-${bag.status}`),
    bag.netGrams === null ? '–' : formatKilograms(bag.netGrams, { thousands: true }),
    formatKilograms(bag.remainingGrams, { thousands: true }),
    bag.filledAt === null ? '–' : localText(bag.filledAt, timeZone),
  ];
}
