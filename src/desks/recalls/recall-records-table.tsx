import type { ComponentChildren, VNode } from 'preact';
import { actionText } from '../../journal/entry-text.js';
import type { ChangeLine } from '../../disposition/changes-to-look-at.js';
import { say } from '../../platform/sentences/sentences.js';
import { Table } from '../../platform/web/kit/table.js';
import { localText } from '../../platform/web/local-text.js';
import type { RecallLink } from '../../recalls/recall-links.js';
import type { RecallRecord } from '../../recalls/recall-records.js';
import { LineEvents } from '../../tracing/thread-packed.js';
import type { LineEvent } from '../../tracing/thread.js';
import { amountCells, amountColumns } from '../../tracing/thread-sources.js';
import { threadLink } from '../../tracing/thread-text.js';

/** More lines than these are folded away on the screen. */
const mostOpen = 15;

/** The bags that the packs may hold sugar of, run by run: the surest first. */
export function SourceBags({ links }: { readonly links: readonly RecallLink[] }): VNode {
  const ofBags = links.filter(({ step }) => step === 'bag-run');
  return (
    <Folded count={ofBags.length} caption={say('recall-bags', { count: ofBags.length })}>
      <Table
        caption={say('recall-bags', { count: ofBags.length })}
        columns={[{ head: say('thread-bag'), align: 'code' }, { head: say('thread-run') }, ...amountColumns()]}
        rows={ofBags.map((link) => ({
          key: `${link.parent} ${link.child} ${link.record}`,
          cells: [
            <a key="bag" href={threadLink(link.parent)}>
              {link.parent}
            </a>,
            <a key="run" href={threadLink(link.child)}>
              {link.child}
            </a>,
            ...amountCells(link),
          ],
        }))}
      />
    </Folded>
  );
}

/** What stopped, was rejected, sampled or swept meanwhile, and the film. */
export function Events({
  events,
  timeZone,
}: {
  readonly events: readonly LineEvent[];
  readonly timeZone: string;
}): VNode | null {
  if (events.length === 0) return null;
  return (
    <Folded count={events.length} caption={say('recall-events', { count: events.length })}>
      <LineEvents events={events} timeZone={timeZone} />
    </Folded>
  );
}

/** What was corrected or entered late of the things that the recall rests on. */
export function Corrections({
  entries,
  timeZone,
}: {
  readonly entries: readonly ChangeLine[];
  readonly timeZone: string;
}): VNode {
  const caption = say('recall-corrections', { count: entries.length });
  return (
    <Folded count={entries.length} caption={caption}>
      <Table
        caption={caption}
        columns={[
          { head: say('recall-entry'), align: 'number' },
          { head: say('thread-what') },
          { head: say('recall-happened') },
          { head: say('recall-recorded') },
        ]}
        rows={entries.map(({ sequence, action, occurredAt, recordedAt }) => ({
          key: String(sequence),
          cells: [
            String(sequence),
            actionText(action),
            localText(occurredAt, timeZone),
            localText(recordedAt, timeZone),
          ],
        }))}
      />
    </Folded>
  );
}

/** Every record that belongs in the file, once, with where it is. */
export function Records({ records }: { readonly records: readonly RecallRecord[] }): VNode {
  const caption = say('recall-records', { count: records.length });
  return (
    <Folded count={records.length} caption={caption}>
      <Table
        caption={caption}
        columns={[{ head: say('recall-record') }, { head: say('recall-record-number'), align: 'code' }]}
        rows={records.map(({ kind, number, link }) => ({
          key: `${kind} ${number}`,
          cells: [
            say(kind),
            <a key="number" href={link}>
              {number}
            </a>,
          ],
        }))}
      />
    </Folded>
  );
}

function Folded({
  count,
  caption,
  children,
}: {
  readonly count: number;
  readonly caption: string;
  readonly children: ComponentChildren;
}): VNode {
  if (count <= mostOpen) return <section class="card">{children}</section>;
  return (
    <details class="card">
      <summary>{caption}</summary>
      {children}
    </details>
  );
}
