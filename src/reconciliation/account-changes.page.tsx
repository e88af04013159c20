import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
import { Table, type TableRow } from '../platform/web/kit/table.js';
import { localText } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import type { AccountChanges, LineChange } from './account-changes.js';
import { ThreadLink } from './account-lines.page.js';
import { kilograms, signedKilograms } from './kilograms.js';

/** What was corrected or came late after the account was signed. It stands beside it and changes nothing of it. */
export function ChangesSince({ viewer, since }: { viewer: Viewer; since: AccountChanges }): VNode {
  return (
    <div class="card">
      <h2>{say('account-changed')}</h2>
      <p>
        {say('account-changed-says', {
          verdict: say(`account-verdict-${since.now.verdict}`),
          difference: signedKilograms(since.now.differenceGrams),
        })}
      </p>
      {since.movedByGrams === null ? null : (
        <p>{say('account-moved', { kilograms: signedKilograms(since.movedByGrams) })}</p>
      )}
      <Table
        caption={say('account-changed-caption')}
        columns={[
          { head: say('account-what') },
          { head: say('account-record') },
          { head: say('account-at') },
          { head: say('account-when-signed'), align: 'number' },
          { head: say('account-now'), align: 'number' },
        ]}
        rows={since.lines.flatMap((change) => rowOf(change, viewer.timeZone))}
      />
    </div>
  );
}

function rowOf(change: LineChange, timeZone: string): readonly TableRow[] {
  const line = change.now ?? change.signed;
  if (line === null) return [];
  const cells = [
    say(`account-line-${line.kind}`),
    line.code === null ? say('account-no-code') : <ThreadLink code={line.code} />,
    localText(line.at, timeZone),
    change.signed === null ? '–' : kilograms(change.signed.grams),
    change.now === null ? '–' : kilograms(change.now.grams),
  ];
  return [{ key: `${line.kind} ${line.recordId} ${line.at}`, cells }];
}
