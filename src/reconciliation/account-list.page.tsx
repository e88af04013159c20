import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
import { OlderEntries } from '../platform/web/older-entries.js';
import { localText } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import type { AccountRow } from './accounts.js';
import { kilograms, signedKilograms } from './kilograms.js';

interface AccountListProps {
  readonly viewer: Viewer;
  readonly accounts: readonly AccountRow[];
  /** The id before which older entries stand; null on the last page. */
  readonly older: string | null;
}

/** Signed accounts, newest first. */
export function accountList({ viewer, accounts, older }: AccountListProps): VNode {
  return (
    <Shell title={say('accounts-title')} viewer={viewer}>
      <p class="quiet">{say('accounts-says')}</p>
      <div class="table-wrap" tabIndex={0} role="region" aria-label={say('accounts-title')}>
        <table>
          <caption>{say('accounts-caption')}</caption>
          <thead>
            <tr>
              <th scope="col">{say('account-number')}</th>
              <th scope="col">{say('account-hopper')}</th>
              <th scope="col">{say('account-time')}</th>
              <th scope="col" class="number">
                {say('account-in')}
              </th>
              <th scope="col" class="number">
                {say('account-difference')}
              </th>
              <th scope="col">{say('account-verdict')}</th>
            </tr>
          </thead>
          <tbody>
            {accounts.map((account) => (
              <tr key={account.id}>
                <th scope="row">
                  <a href={`/accounts/${account.id}`}>{account.number}</a>
                </th>
                <td>{account.hopperCode}</td>
                <td>
                  {say('account-from-until', {
                    fromAt: localText(account.fromAt, viewer.timeZone),
                    untilAt: localText(account.untilAt, viewer.timeZone),
                  })}
                </td>
                <td class="number">{kilograms(account.inGrams)}</td>
                <td class="number">{signedKilograms(account.differenceGrams)}</td>
                <td>{account.isVoid ? say('account-void') : say(`account-verdict-${account.verdict}`)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {accounts.length === 0 ? <p>{say('nothing-here')}</p> : null}
      <OlderEntries path="/accounts" older={older} />
    </Shell>
  );
}
