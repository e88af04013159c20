import type { VNode } from 'preact';
import { mayDo } from '../../platform/actor.js';
import { say } from '../../platform/sentences/sentences.js';
import { ActLink } from '../../platform/web/kit/act.js';
import { Table } from '../../platform/web/kit/table.js';
import { localText } from '../../platform/web/local-text.js';
import { OlderEntries } from '../../platform/web/older-entries.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import { minutesBetween } from './recall-clock.js';
import type { RecallLine } from './recall-lines.js';

interface ListProps {
  readonly viewer: Viewer;
  readonly open: readonly RecallLine[];
  readonly signed: readonly RecallLine[];
  readonly older: string | null;
  readonly now: string;
}

/** What runs first, recalls before exercises; then those that are signed. */
export function recallListPage({ viewer, open, signed, older, now }: ListProps): VNode {
  return (
    <Shell title={say('recalls-title')} viewer={viewer}>
      {mayDo(viewer.actor.roles, 'run-recalls') ? (
        <div class="acts">
          <ActLink href="/quality/recalls/new" says={say('recall-new-title')} tone="asked" accessKey="n" />
        </div>
      ) : null}
      <RecallTable caption={say('recalls-open', { count: open.length })} recalls={open} viewer={viewer} now={now} />
      <RecallTable caption={say('recalls-signed')} recalls={signed} viewer={viewer} now={now} />
      <OlderEntries path="/quality/recalls" older={older} />
    </Shell>
  );
}

interface TableProps extends Pick<ListProps, 'viewer' | 'now'> {
  readonly caption: string;
  readonly recalls: readonly RecallLine[];
}

function RecallTable({ caption, recalls, viewer, now }: TableProps): VNode {
  return (
    <Table
      caption={caption}
      columns={[
        { head: say('recall-column-number'), align: 'code' },
        { head: say('recall-column-kind') },
        { head: say('recall-column-reason') },
        { head: say('recall-column-started') },
        { head: say('recall-column-clock') },
        { head: say('recall-accounted'), align: 'number' },
        { head: say('recall-column-answered'), align: 'number' },
      ]}
      rows={recalls.map(({ recall, accountedPercent, respondedCount, customerCount }) => ({
        key: recall.id,
        isLoud: recall.kind === 'recall' && recall.signedAt === null,
        cells: [
          <a key="number" href={`/quality/recalls/${recall.id}`}>
            {recall.number}
          </a>,
          say(`recall-kind-${recall.kind}`),
          <span key="reason" class="reads">
            {recall.reason.length > 90 ? `${recall.reason.slice(0, 89)}…` : recall.reason}
          </span>,
          localText(recall.startedAt, viewer.timeZone),
          say(recall.stoppedAt === null ? 'recall-clock-runs-short' : 'recall-clock-stopped-short', {
            minutes: minutesBetween(recall.startedAt, recall.stoppedAt ?? now),
          }),
          accountedPercent === null ? '–' : `${accountedPercent} %`,
          say('recall-answered-of', { count: respondedCount, of: customerCount }),
        ],
      }))}
    />
  );
}
