import type { VNode } from 'preact';
import { formatKilograms } from '../core/units/grams.js';
import { say } from '../platform/sentences/sentences.js';
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
      {bags.length === 0 ? <p>{say('nothing-here')}</p> : null}
      <div class="table-wrap" tabIndex={0} role="region" aria-label={say('bags-title')}>
        <table>
          <caption>{say('bags-caption')}</caption>
          <thead>
            <tr>
              <th scope="col">{say('bags-column-bag')}</th>
              <th scope="col">{say('bags-column-state')}</th>
              <th scope="col">{say('bags-column-where')}</th>
              <th scope="col">{say('bags-column-net')}</th>
              <th scope="col">{say('bags-column-left')}</th>
              <th scope="col">{say('bags-column-filled')}</th>
            </tr>
          </thead>
          <tbody>
            {bags.map((bag) => (
              <BagLineRow key={bag.id} bag={bag} timeZone={viewer.timeZone} />
            ))}
          </tbody>
        </table>
      </div>
      <OlderEntries path="/bags" older={next} />
    </Shell>
  );
}

function BagLineRow({ bag, timeZone }: { bag: BagLine; timeZone: string }): VNode {
  return (
    <tr>
      <th scope="row">
        <a href={`/bags/${bag.id}`}>{bag.number}</a>
      </th>
      <td>
        <StateMark state={bag.state} />
        {bag.isDoubtful ? <StateMark state="doubtful" /> : null}
      </td>
      <td>{say(`bag-status-${bag.status}`)}</td>
      <td class="figures">{bag.netGrams === null ? '–' : formatKilograms(bag.netGrams)}</td>
      <td class="figures">{formatKilograms(bag.remainingGrams)}</td>
      <td>{bag.filledAt === null ? '–' : localText(bag.filledAt, timeZone)}</td>
    </tr>
  );
}
