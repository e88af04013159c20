import type { VNode } from 'preact';
import type { ComplaintRow } from '../../complaints/complaints.js';
import { mayDo } from '../../platform/actor.js';
import { say } from '../../platform/sentences/sentences.js';
import { ActLink } from '../../platform/web/kit/act.js';
import { Table } from '../../platform/web/kit/table.js';
import { localText } from '../../platform/web/local-text.js';
import { OlderEntries } from '../../platform/web/older-entries.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';

interface ListProps {
  readonly viewer: Viewer;
  readonly toDecide: readonly ComplaintRow[];
  readonly all: readonly ComplaintRow[];
  readonly older: string | null;
}

/** What needs a decision first, the gravest on top; then all of them as they came. */
export function complaintListPage({ viewer, toDecide, all, older }: ListProps): VNode {
  return (
    <Shell title={say('complaints-title')} viewer={viewer}>
      {mayDo(viewer.actor.roles, 'take-complaints') ? (
        <div class="acts">
          <ActLink href="/quality/complaints/new" says={say('intake-title')} tone="asked" accessKey="n" />
        </div>
      ) : null}
      <ComplaintTable
        caption={say('complaints-to-decide', { count: toDecide.length })}
        complaints={toDecide}
        timeZone={viewer.timeZone}
      />
      <ComplaintTable caption={say('complaints-all')} complaints={all} timeZone={viewer.timeZone} />
      <OlderEntries path="/quality/complaints" older={older} />
    </Shell>
  );
}

interface TableProps {
  readonly caption: string;
  readonly complaints: readonly ComplaintRow[];
  readonly timeZone: string;
}

function ComplaintTable({ caption, complaints, timeZone }: TableProps): VNode {
  return (
    <Table
      caption={caption}
      columns={[
        { head: say('complaint-column-number'), align: 'code' },
        { head: say('complaint-column-about') },
        { head: say('complaint-column-severity') },
        { head: say('complaint-column-state') },
        { head: say('complaint-column-code'), align: 'code' },
        { head: say('complaint-column-words') },
        { head: say('complaint-column-received') },
      ]}
      rows={complaints.map((complaint) => ({
        key: complaint.id,
        isLoud: complaint.severity === 'food-safety' && ['open', 'reopened'].includes(complaint.status),
        cells: [
          <a key="number" href={`/quality/complaints/${complaint.id}`}>
            {complaint.number}
          </a>,
          say(`complaint-about-${complaint.category}`),
          say(`severity-${complaint.severity}`),
          say(`complaint-is-${complaint.status}`),
          complaint.codeAsRead ?? '–',
          <span key="words" class="reads">
            {complaint.words.length > 90 ? `${complaint.words.slice(0, 89)}…` : complaint.words}
          </span>,
          localText(complaint.receivedAt, timeZone),
        ],
      }))}
    />
  );
}
