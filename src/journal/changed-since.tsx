import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
import { localText } from '../platform/web/local-text.js';
import { actionText, contentText } from './entry-text.js';
import type { EntryLine } from './journal-entries.js';

interface ChangedSinceProps {
  /** What the journal has said of the thing since the page was made, oldest first. */
  readonly entries: readonly EntryLine[];
  /** What people are called, by id. */
  readonly names: ReadonlyMap<string, string>;
  readonly timeZone: string;
}

/** A page that moved on shows what changed since it was made, above the form that was not taken. */
export function ChangedSince({ entries, names, timeZone }: ChangedSinceProps): VNode | null {
  if (entries.length === 0) return null;
  return (
    <section class="card" aria-labelledby="changed-since">
      <h2 id="changed-since">{say('changed-since')}</h2>
      <ul>
        {entries.map((entry) => (
          <li key={entry.sequence}>
            {localText(entry.recordedAt, timeZone)}: <strong>{actionText(entry.action)}</strong>,{' '}
            {names.get(entry.personId ?? '') ?? say('journal-house')}
            {entry.reason === null ? null : `: ${entry.reason}`}
            {entry.after === null ? null : <small class="code-text"> {contentText(entry.after)}</small>}
          </li>
        ))}
      </ul>
      <p>{say('changed-since-next')}</p>
    </section>
  );
}
