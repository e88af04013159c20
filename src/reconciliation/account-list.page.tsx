import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
import { Table } from '../platform/web/kit/table.js';
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
      <Table
        caption={say('accounts-caption')}
        columns={[
          { head: say('account-number') },
          { head: say('account-hopper') },
          { head: say('account-time') },
          { head: say('account-in'), align: 'number' },
          { head: say('account-difference'), align: 'number' },
          { head: say('account-verdict') },
        ]}
        rows={accounts.map((account) => ({
          key: account.id,
          cells: [
            <a href={`/accounts/${account.id}`}>{account.number}</a>,
            account.hopperCode,
            say('account-from-until', {
              fromAt: localText(account.fromAt, viewer.timeZone),
              untilAt: localText(account.untilAt, viewer.timeZone),
            }),
            kilograms(account.inGrams),
            signedKilograms(account.differenceGrams),
            account.isVoid ? say('account-void') : say(`account-verdict-${account.verdict}`),
          ],
        }))}
      />
      <OlderEntries path="/accounts" older={older} />
    </Shell>
  );
}
