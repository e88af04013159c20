import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
import { OlderEntries } from '../platform/web/older-entries.js';
import { localText } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import { actionText, contentText } from './entry-text.js';
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
      <div class="table-wrap" tabIndex={0} role="region" aria-label={say('journal-title')}>
        <table>
          <caption>{say('journal-caption', { count: entries.length })}</caption>
          <thead>
            <tr>
              <th scope="col" class="number">
                {say('journal-sequence')}
              </th>
              <th scope="col">{say('journal-recorded')}</th>
              <th scope="col">{say('journal-what')}</th>
              <th scope="col">{say('journal-before-after')}</th>
              <th scope="col">{say('journal-who')}</th>
            </tr>
          </thead>
          <tbody>
            {entries.map((entry) => (
              <EntryRow key={entry.sequence} entry={entry} timeZone={viewer.timeZone} />
            ))}
          </tbody>
        </table>
      </div>
      {entries.length === 0 ? <p>{say('nothing-here')}</p> : null}
      <OlderEntries path="/journal" older={older} />
    </Shell>
  );
}

function EntryRow({ entry, timeZone }: { readonly entry: EntryLine; readonly timeZone: string }): VNode {
  return (
    <tr>
      <td class="number">{entry.sequence}</td>
      <td>
        {localText(entry.recordedAt, timeZone)}
        {entry.occurredAt === entry.recordedAt ? null : (
          <small>
            <br />
            {say('journal-happened', { at: localText(entry.occurredAt, timeZone) })}
          </small>
        )}
      </td>
      <td>
        {actionText(entry.action)}
        <br />
        <small>{`${entry.subjectKind} ${entry.subjectId}`}</small>
        {entry.reason === null ? null : <p>{say('journal-reason', { reason: entry.reason })}</p>}
      </td>
      <td>
        {entry.before === null ? null : <p>{say('journal-before', { content: contentText(entry.before) })}</p>}
        {entry.after === null ? null : <p>{contentText(entry.after)}</p>}
      </td>
      <td>
        <small>{entry.personId ?? entry.deviceId ?? say('journal-house')}</small>
      </td>
    </tr>
  );
}
