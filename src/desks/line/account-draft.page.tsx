import type { VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act } from '../../platform/web/kit/act.js';
import { HiddenEntry, TextEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { localText } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { balanceSentence } from '../../reconciliation/account-sentence.js';
import type { AccountView } from '../../reconciliation/account-view.js';
import { ActPage } from './act.page.js';
import type { LineNow } from './line-rows.js';

interface AccountProps {
  readonly viewer: Viewer;
  readonly at: LineNow;
  readonly account: AccountView;
  readonly isOver: boolean;
  readonly trouble: FormTrouble | null;
}

/** The account of the shift as the records stand: the sentence, the verdict, and the signature when the shift is over. */
export function lineAccountPage({ viewer, at, account, isOver, trouble }: AccountProps): VNode {
  const facts = {
    fromAt: localText(account.fromAt, viewer.timeZone),
    untilAt: localText(account.untilAt, viewer.timeZone),
  };
  return (
    <ActPage viewer={viewer} at={at} title={say('line-to-account')} startsAtBack>
      <p>{say('account-covers', facts)}</p>
      <p class="sentence">{balanceSentence(account)}</p>
      <section class="card">
        <h2>{say(`account-verdict-${account.verdict}`)}</h2>
        <p>{say(`account-verdict-says-${account.verdict}`)}</p>
        {account.openingNotSeen === null ? null : <p>{say(`account-opening-${account.openingNotSeen}`)}</p>}
        {account.closingNotSeen === null ? null : <p>{say(`account-closing-${account.closingNotSeen}`)}</p>}
      </section>
      {isOver ? (
        <EntryForm viewer={viewer} action={`/line/${at.line.id}/account`} trouble={trouble}>
          <HiddenEntry name="fromAt" value={account.fromAt} />
          <HiddenEntry name="untilAt" value={account.untilAt} />
          <TextEntry name="statedLoss" label={say('field-stated-loss')} isLong maxLength={1000} trouble={trouble} />
          <Act says={say('account-sign')} />
        </EntryForm>
      ) : (
        <p class="quiet">{say('account-later')}</p>
      )}
    </ActPage>
  );
}
