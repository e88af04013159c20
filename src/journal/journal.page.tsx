import type { ComponentChildren, VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
import { Table } from '../platform/web/kit/table.js';
import { OlderEntries } from '../platform/web/older-entries.js';
import { localText } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import { actionText, contentText, idText, subjectText } from './entry-text.js';
import type { EntryLine } from './journal-entries.js';

interface JournalListProps {
  readonly viewer: Viewer;
  readonly entries: readonly EntryLine[];
  /** The sequence before which older entries stand; null on the last page. */
  readonly older: number | null;
}

/** The journal: every accepted change, newest first. */
export function journalListPage({ viewer, entries, older }: JournalListProps): VNode {
  return (
    <Shell title={say('journal-title')} viewer={viewer}>
      <p class="quiet">{say('journal-says')}</p>
      <Table
        caption={say('journal-caption', { count: entries.length })}
        columns={[
          { head: say('journal-sequence'), align: 'number' },
          { head: say('journal-recorded') },
          { head: say('journal-what') },
          { head: say('journal-before-after') },
          { head: say('journal-who') },
        ]}
        rows={entries.map((entry) => ({ key: String(entry.sequence), cells: cellsOf(entry, viewer.timeZone) }))}
      />
      <OlderEntries path="/journal" older={older} />
    </Shell>
  );
}

function cellsOf(entry: EntryLine, timeZone: string): readonly ComponentChildren[] {
  return [
    entry.sequence,
    <>
      {localText(entry.recordedAt, timeZone)}
      {entry.occurredAt === entry.recordedAt ? null : (
        <small>
          <br />
          {say('journal-happened', { at: localText(entry.occurredAt, timeZone) })}
        </small>
      )}
    </>,
    <>
      {actionText(entry.action)}
      <br />
      <small>{subjectText(entry.subjectKind, entry.subjectId)}</small>
      {entry.reason === null ? null : <p>{say('journal-reason', { reason: entry.reason })}</p>}
    </>,
    <>
      {entry.before === null ? null : <p>{say('journal-before', { content: contentText(entry.before) })}</p>}
      {entry.after === null ? null : <p>{contentText(entry.after)}</p>}
    </>,
    <small>{whoText(entry)}</small>,
  ];
}

/** Who it was, by the id alone: the journal holds no names. */
function whoText({ personId, deviceId }: EntryLine): string {
  const id = personId ?? deviceId;
  return id === null ? say('journal-house') : idText(id);
}
