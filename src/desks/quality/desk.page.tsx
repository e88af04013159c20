import type { VNode } from 'preact';
import { mayDo } from '../../platform/actor.js';
import { say } from '../../platform/sentences/sentences.js';
import { Act, ActLink } from '../../platform/web/kit/act.js';
import { Live } from '../../platform/web/kit/live.js';
import { Table } from '../../platform/web/kit/table.js';
import { localText, sayLocally } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import { StateMark, type MarkedState } from '../../platform/web/state-mark.js';
import type { DeskItem, RiskGroup } from './order-of-risk.js';

/** A lot that was packed lately. */
export interface LotLine {
  readonly id: string;
  readonly code: string;
  readonly formatName: string;
  /** What quality said of the lot itself; null: nothing, so it follows its bags. */
  readonly state: MarkedState | null;
  readonly changedAt: string;
}

interface DeskProps {
  readonly viewer: Viewer;
  readonly groups: readonly RiskGroup[];
  readonly waitingForResultsCount: number;
  /** Late entries and corrections that nobody has looked at. */
  readonly changeCount: number;
  /** Recalls and exercises that nobody has signed yet. */
  readonly recallCount: number;
  readonly lots: readonly LotLine[];
  readonly names: ReadonlyMap<string, string>;
}

/** What changes what waits here. */
const followed = [
  ...['place-hold', 'lift-hold', 'set-hold-class', 'decide', 'decide-on-bags', 'assign-grade', 'report-result'],
  ...['correct-result', 'watch-results', 'tip-bag', 'load-pallet', 'close-delivery', 'explain-point'],
];

/** What needs a decision of quality now, the gravest first: each with a sentence and one act. */
export function deskPage({ viewer, groups, ...desk }: DeskProps): VNode {
  const count = groups.reduce((sum, { items, moreCount }) => sum + items.length + moreCount, 0);
  return (
    <Shell title={say('desk-title')} viewer={viewer}>
      <div class="acts">
        <ActLink href="/quality/holds/new" says={say('desk-place-hold')} tone="careful" accessKey="h" />
        <ActLink href="/quality/changes" says={say('desk-changes', { count: desk.changeCount })} accessKey="c" />
        <ActLink href="/quality/results" says={say('desk-results')} accessKey="r" />
        <ActLink href="/quality/recalls" says={say('desk-recalls', { count: desk.recallCount })} accessKey="l" />
        {mayDo(viewer.actor.roles, 'read-reach') ? <ActLink href="/quality/reach" says={say('desk-to-reach')} /> : null}
        <ActLink href="/paper-forms" says={say('paper-forms-title')} accessKey="p" />
      </div>
      <Live id="needs-decision" about={followed}>
        <p class="sentence">{count === 0 ? say('desk-nothing') : say('desk-says', { count })}</p>
        {groups.map((group) => (
          <Group key={group.risk} group={group} viewer={viewer} names={desk.names} />
        ))}
        {desk.waitingForResultsCount === 0 ? null : (
          <p class="quiet">{say('desk-waiting-for-results', { count: desk.waitingForResultsCount })}</p>
        )}
      </Live>
      <Lots lots={desk.lots} viewer={viewer} />
    </Shell>
  );
}

interface GroupProps {
  readonly group: RiskGroup;
  readonly viewer: Viewer;
  readonly names: ReadonlyMap<string, string>;
}

function Group({ group, viewer, names }: GroupProps): VNode {
  const isGrave = group.risk === 'safety-hold-away' || group.risk === 'result-outside-used';
  const caption = say(`risk-${group.risk}`, { count: group.items.length + group.moreCount });
  return (
    <section>
      <Table
        caption={caption}
        columns={[{ head: say('desk-what') }, { head: say('desk-since') }, { head: say('desk-act') }]}
        rows={group.items.map((item) => ({
          key: item.key,
          isLoud: isGrave,
          cells: [
            <Sentence key="what" item={item} viewer={viewer} names={names} />,
            localText(item.since, viewer.timeZone),
            <ActLink key="act" href={item.act.href} says={say(item.act.code)} tone={isGrave ? 'asked' : 'plain'} />,
          ],
        }))}
      />
      {group.moreCount === 0 ? null : <p class="quiet">{say('desk-more', { count: group.moreCount })}</p>}
    </section>
  );
}

function Sentence({ item, viewer, names }: { item: DeskItem; viewer: Viewer; names: GroupProps['names'] }): VNode {
  const person = item.personId === null ? null : (names.get(item.personId) ?? null);
  return (
    <span class="reads">
      {person === null ? null : `${person}: `}
      {sayLocally(item.sentence.code, item.sentence.facts, viewer.timeZone)}
    </span>
  );
}

function Lots({ lots, viewer }: Pick<DeskProps, 'lots' | 'viewer'>): VNode {
  return (
    <section>
      <form method="get" action="/quality/lots" class="entry">
        <label for="lot">{say('desk-lot-label')}</label>
        <div class="search">
          <input id="lot" name="code" type="text" maxLength={80} autocomplete="off" />
          <Act says={say('desk-open-file')} tone="plain" />
        </div>
      </form>
      <Table
        caption={say('desk-lots')}
        columns={[
          { head: say('desk-lot'), align: 'code' },
          { head: say('desk-format') },
          { head: say('desk-state') },
          { head: say('desk-coded') },
        ]}
        rows={lots.map((lot) => ({
          key: lot.id,
          cells: [
            <a key="lot" href={`/quality/lots/${lot.id}`}>
              {lot.code}
            </a>,
            lot.formatName,
            lot.state === null ? say('desk-follows-bags') : <StateMark key="state" state={lot.state} />,
            localText(lot.changedAt, viewer.timeZone),
          ],
        }))}
        empty={say('desk-no-lots')}
      />
    </section>
  );
}
