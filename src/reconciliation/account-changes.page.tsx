import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
import { localText } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import type { AccountChanges, LineChange } from './account-changes.js';
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
      <div class="table-wrap" tabIndex={0} role="region" aria-label={say('account-changed')}>
        <table>
          <caption>{say('account-changed-caption')}</caption>
          <thead>
            <tr>
              <th scope="col">{say('account-what')}</th>
              <th scope="col">{say('account-record')}</th>
              <th scope="col">{say('account-at')}</th>
              <th scope="col" class="number">
                {say('account-when-signed')}
              </th>
              <th scope="col" class="number">
                {say('account-now')}
              </th>
            </tr>
          </thead>
          <tbody>
            {since.lines.map((change) => (
              <ChangeRow key={keyOf(change)} change={change} timeZone={viewer.timeZone} />
            ))}
          </tbody>
        </table>
      </div>
    </div>
  );
}

function ChangeRow({ change, timeZone }: { change: LineChange; timeZone: string }): VNode | null {
  const line = change.now ?? change.signed;
  if (line === null) return null;
  return (
    <tr>
      <th scope="row">{say(`account-line-${line.kind}`)}</th>
      <td>
        {line.code === null ? (
          say('account-no-code')
        ) : (
          <a class="code" href={`/thread?code=${encodeURIComponent(line.code)}`}>
            {line.code}
          </a>
        )}
      </td>
      <td>{localText(line.at, timeZone)}</td>
      <td class="number">{change.signed === null ? '–' : kilograms(change.signed.grams)}</td>
      <td class="number">{change.now === null ? '–' : kilograms(change.now.grams)}</td>
    </tr>
  );
}

const keyOf = ({ signed, now }: LineChange): string => {
  const line = now ?? signed;
  return line === null ? '' : `${line.kind} ${line.recordId} ${line.at}`;
};
