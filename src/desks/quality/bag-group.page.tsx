import type { VNode } from 'preact';
import { propertyText } from '../../laboratory/sample-text.js';
import { say } from '../../platform/sentences/sentences.js';
import { kilogramsText } from '../../platform/web/figures-text.js';
import { HiddenEntry } from '../../platform/web/kit/entries.js';
import { Table } from '../../platform/web/kit/table.js';
import { localText } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import { DecisionBox } from './decision-box.js';
import type { FileTrouble } from './file-trouble.js';
import type { SecondPerson } from './second-people.js';
import type { WaitingBag } from './waiting-bags.js';

interface BagGroupProps {
  readonly viewer: Viewer;
  /** What these bags have in common, in words. */
  readonly title: string;
  readonly query: string;
  readonly bags: readonly WaitingBag[];
  readonly seconds: readonly SecondPerson[];
  readonly trouble: FileTrouble | null;
}

/** Waiting bags to be decided on together: ticked are those whose results are complete and within. */
export function bagGroupPage({ viewer, title, query, bags, seconds, trouble }: BagGroupProps): VNode {
  if (bags.length === 0) {
    return (
      <Shell title={title} viewer={viewer}>
        <p class="sentence">{say('group-empty')}</p>
        <p>
          <a href="/quality">{say('desk-title')}</a>
        </p>
      </Shell>
    );
  }
  return (
    <Shell title={title} viewer={viewer}>
      {trouble?.changed ?? null}
      <p class="sentence">{say('group-says', { count: bags.length })}</p>
      <DecisionBox viewer={viewer} action={`/quality/bags?${query}`} trouble={trouble?.form ?? null} seconds={seconds}>
        <HiddenEntry name="seenSequence" value={String(viewer.journalSequence)} />
        <BagTicks viewer={viewer} bags={bags} trouble={trouble} />
      </DecisionBox>
    </Shell>
  );
}

function BagTicks({ viewer, bags, trouble }: Pick<BagGroupProps, 'viewer' | 'bags' | 'trouble'>): VNode {
  const sent = trouble?.form.entered['bagIds'];
  const entered = trouble === null ? null : new Set(typeof sent === 'string' ? [sent] : (sent ?? []));
  const isTicked = ({ bag, laboratory, standing }: WaitingBag): boolean =>
    entered?.has(bag.id) ?? (laboratory.verdict === 'complete-and-within' && !standing.isOnHold);
  return (
    <div id="field-bagIds">
      <Table
        caption={say('group-bags')}
        columns={[
          { head: say('group-bag') },
          { head: say('bags-column-where') },
          { head: say('bag-net'), align: 'number' },
          { head: say('thread-results') },
          { head: say('file-lacks') },
          { head: say('bags-column-filled') },
        ]}
        rows={bags.map((waiting) => ({
          key: waiting.bag.id,
          isLoud: waiting.laboratory.verdict === 'outside',
          cells: [
            <label key="bag" class="tick">
              <input type="checkbox" name="bagIds" value={waiting.bag.id} checked={isTicked(waiting)} />
              <span class="code">{waiting.bag.number}</span>
            </label>,
            say(`bag-status-${waiting.bag.status}`),
            waiting.bag.netGrams === null ? '–' : kilogramsText(waiting.bag.netGrams),
            resultsText(waiting),
            <span key="lacks">
              {lackText(waiting)} <a href={`/quality/bags/${waiting.bag.id}`}>{say('file-look')}</a>
            </span>,
            localText(waiting.since, viewer.timeZone),
          ],
        }))}
      />
    </div>
  );
}

function resultsText({ laboratory }: WaitingBag): string {
  return laboratory.results.map(({ property, amount }) => `${propertyText(property)} ${amount}`).join('; ') || '–';
}

function lackText({ laboratory, standing }: WaitingBag): string {
  const parts = [
    ...(standing.isOnHold ? [say('state-on-hold')] : []),
    ...laboratory.outside.map((property) => `${propertyText(property)}: ${say('result-outside')}`),
    ...laboratory.missing.map((property) => `${propertyText(property)}: ${say('result-not-there')}`),
  ];
  return parts.join('; ') || say('group-nothing-missing');
}
