import type { VNode } from 'preact';
import { holdNewPath } from '../../disposition/hold-link.js';
import { mayDo } from '../../platform/actor.js';
import { say } from '../../platform/sentences/sentences.js';
import { ActLink } from '../../platform/web/kit/act.js';
import { localText } from '../../platform/web/local-text.js';
import { Shell } from '../../platform/web/shell.js';
import { choiceKey } from '../finding.js';
import { RecallsBegun } from '../recalls/recalls-begun.js';
import { ContactBox, LinkBox, RareBoxes } from './complaint-boxes.js';
import type { ComplaintFileProps } from './complaint-file-props.js';
import type { ComplaintFile } from './complaint-file.js';
import { SimilarComplaints } from './similar-table.js';
import { StandOuts } from './stand-out-table.js';
import { StepBox, Steps } from './step-boxes.js';

/** A complaint: what was said, what it is about, what stands out, what is like it, what was done; and the next step. */
export function complaintFilePage(props: ComplaintFileProps): VNode {
  const { viewer, file, trouble } = props;
  const { complaint, standOuts, thread } = file;
  const isAtWork = complaint.status !== 'closed' && complaint.status !== 'withdrawn';
  const mayHandle = mayDo(viewer.actor.roles, 'handle-complaints');
  return (
    <Shell title={say('complaint-named', { complaint: complaint.number })} viewer={viewer}>
      {trouble?.changed ?? null}
      <Told file={file} viewer={viewer} />
      {isAtWork && complaint.severity === 'food-safety' ? <ProposedHold file={file} viewer={viewer} /> : null}
      {isAtWork && mayDo(viewer.actor.roles, 'take-complaints') ? (
        <LinkBox {...props} isOpen={thread === null} />
      ) : null}
      <section>
        <h2>{say('stand-out-title')}</h2>
        {standOuts === null ? (
          <p class="quiet">{say(thread === null ? 'stand-out-not-linked' : 'stand-out-not-packed')}</p>
        ) : (
          <StandOuts of={standOuts} timeZone={viewer.timeZone} />
        )}
      </section>
      {complaint.status === 'withdrawn' ? null : (
        <RecallsBegun viewer={viewer} origin={{ kind: 'complaint', id: complaint.id }} recalls={file.recalls} />
      )}
      <SimilarComplaints similar={file.similar} timeZone={viewer.timeZone} />
      <Steps {...props} />
      {mayHandle && complaint.status !== 'withdrawn' ? <StepBox {...props} /> : null}
      {mayHandle ? <ContactBox {...props} /> : null}
      {mayHandle && isAtWork ? <RareBoxes {...props} /> : null}
    </Shell>
  );
}

/** What was said, and where it leads. */
function Told({ file, viewer }: Pick<ComplaintFileProps, 'file' | 'viewer'>): VNode {
  const { complaint, thread } = file;
  const facts: readonly (readonly [string, string | null])[] = [
    ['complaint-column-state', say(`complaint-is-${complaint.status}`)],
    ['complaint-column-about', say(`complaint-about-${complaint.category}`)],
    ['complaint-column-severity', say(`severity-${complaint.severity}`)],
    ['complaint-column-code', complaint.codeAsRead],
    ['intake-where', complaint.boughtWhere],
    ['intake-on', complaint.boughtOn],
    ['intake-packs', complaint.packCount === null ? null : String(complaint.packCount)],
    ['complaint-column-received', localText(complaint.receivedAt, viewer.timeZone)],
  ];
  return (
    <section class="card">
      <p class="sentence">{complaint.words}</p>
      <dl class="facts">
        {facts.map(([code, text]) =>
          text === null ? null : (
            <>
              <dt>{say(code)}</dt>
              <dd>{text}</dd>
            </>
          ),
        )}
        {thread === null ? null : (
          <>
            <dt>{say('complaint-thread')}</dt>
            <dd>
              <a href={threadPath(file)}>
                {say(`thread-title-${thread.subject.kind}`, {
                  name: thread.subject.name,
                  at: thread.subject.localTime ?? '',
                })}
              </a>
            </dd>
          </>
        )}
      </dl>
    </section>
  );
}

/** The very packs: by the thing's name, its time and which coming of it. */
function threadPath({ thread }: ComplaintFile): string {
  if (thread === null) return '/';
  const { kind, id, name, localTime } = thread.subject;
  const code = encodeURIComponent(kind === 'lot' || kind === 'liner-lot' ? name : id);
  const at = localTime === null ? '' : `&at=${encodeURIComponent(localTime)}`;
  const meant = localTime === null ? '' : `&meant=${encodeURIComponent(choiceKey(thread))}`;
  return `/thread?code=${code}${at}${meant}`;
}

/** A hold is proposed with its reach, never placed by itself. */
function ProposedHold({ file, viewer }: Pick<ComplaintFileProps, 'file' | 'viewer'>): VNode {
  const { complaint, thread } = file;
  const subject = thread?.subject ?? null;
  const here = `/quality/complaints/${complaint.id}`;
  const href =
    subject?.kind === 'liner-lot'
      ? `/quality/holds/new?code=${encodeURIComponent(subject.id)}`
      : holdNewPath(subject?.kind ?? '', subject?.id ?? '', here);
  return (
    <section class="card refusal">
      <p>{say(subject === null ? 'complaint-hold-unlinked' : 'complaint-hold-proposed')}</p>
      {subject !== null && mayDo(viewer.actor.roles, 'place-holds') ? (
        <ActLink href={href} says={say('complaint-hold-look')} tone="careful" />
      ) : null}
    </section>
  );
}
