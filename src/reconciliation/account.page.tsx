import type { VNode } from 'preact';
import type { Language } from '../platform/sentences/language.js';
import { say } from '../platform/sentences/sentences.js';
import { PaperPageLink } from '../platform/web/kit/paper-page.js';
import { localText } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import { ChangesSince } from './account-changes.page.js';
import { LinesTable, PackagingTable } from './account-lines.page.js';
import { balanceSentence } from './account-sentence.js';
import type { AccountView, SuspectView } from './account-view.js';
import type { AccountWithCorrections } from './accounts.js';
import { kilograms, shortPercent, signedKilograms, tenthsOfKilograms, uncertainKilograms } from './kilograms.js';

interface AccountProps {
  readonly viewer: Viewer;
  readonly signed: AccountWithCorrections;
  readonly paperLanguage: Language;
}

/** A signed account: the sentence that must balance, its lines, the verdict, and what was corrected since. */
export function accountView({ viewer, signed, paperLanguage }: AccountProps): VNode {
  const { account } = signed;
  const at = (instant: string): string => localText(instant, viewer.timeZone);
  return (
    <Shell title={say('account-title', { number: signed.number, hopper: account.hopperName })} viewer={viewer}>
      {signed.isVoid ? (
        <div class="card refusal">
          <p>{say('account-is-void', { number: signed.number })}</p>
        </div>
      ) : null}
      <PaperPageLink viewer={viewer} href={`/accounts/${signed.id}`} paperLanguage={paperLanguage} />
      <p>{say('account-covers', { fromAt: at(signed.fromAt), untilAt: at(signed.untilAt) })}</p>
      <p class="quiet">
        {say('account-drawn', { fromAt: at(account.drawnFromAt), untilAt: at(account.drawnUntilAt) })}
      </p>
      <p class="sentence">{balanceSentence(account)}</p>
      <Verdict account={account} statedLoss={signed.statedLoss} />
      {signed.since.hasChanged ? <ChangesSince viewer={viewer} since={signed.since} /> : null}
      {signed.since.hasChanged ? null : <p class="quiet">{say('account-unchanged')}</p>}
      <LinesTable account={account} onPaper={signed.onPaper} timeZone={viewer.timeZone} />
      {account.packaging.length === 0 ? null : <PackagingTable packaging={account.packaging} />}
      <p class="caution">{say('account-caution')}</p>
      <p class="quiet">{say('account-signed', { at: at(signed.signedAt) })}</p>
      <p class="quiet">
        {say('account-journal-head')} <code class="code">{signed.journalHead}</code>
      </p>
    </Shell>
  );
}

function Verdict({ account, statedLoss }: { account: AccountView; statedLoss: string | null }): VNode {
  const { standardUncertaintyGrams: uncertainty } = account;
  return (
    <div class="card">
      <h2>{say(`account-verdict-${account.verdict}`)}</h2>
      <p>{say(`account-verdict-says-${account.verdict}`)}</p>
      {account.openingNotSeen === null ? null : <p>{say(`account-opening-${account.openingNotSeen}`)}</p>}
      {account.closingNotSeen === null ? null : <p>{say(`account-closing-${account.closingNotSeen}`)}</p>}
      <dl class="figures">
        <Figure code="account-difference" text={signedKilograms(account.differenceGrams)} />
        <Figure
          code="account-share"
          text={account.differencePercent === null ? '–' : `${shortPercent(account.differencePercent)} %`}
        />
        <Figure code="account-uncertainty" text={uncertainty === null ? '–' : uncertainKilograms(uncertainty)} />
        <Figure code="account-allowed" text={uncertainty === null ? '–' : `± ${tenthsOfKilograms(2 * uncertainty)}`} />
      </dl>
      {account.hasAssumed ? <p>{say('account-has-assumed')}</p> : null}
      {statedLoss === null ? null : <p>{say('account-stated-loss', { text: statedLoss })}</p>}
      {account.suspects.length === 0 ? null : <Suspects suspects={account.suspects} />}
      {account.verdict === 'does-not-close' && account.suspects.length === 0 ? (
        <p>{say('account-no-suspect')}</p>
      ) : null}
    </div>
  );
}

function Figure({ code, text }: { code: string; text: string }): VNode {
  return (
    <div>
      <dt>{say(code)}</dt>
      <dd>{text}</dd>
    </div>
  );
}

/** More are in the JSON; beyond a handful nobody looks. */
const suspectsShown = 5;

function Suspects({ suspects }: { suspects: readonly SuspectView[] }): VNode {
  return (
    <>
      <h3>{say('account-suspects')}</h3>
      <ol>
        {suspects.slice(0, suspectsShown).map((suspect) => (
          <li key={`${suspect.mistake} ${suspect.recordId ?? ''}`}>
            {say(`account-mistake-${suspect.mistake}`, {
              kilograms: kilograms(suspect.grams),
              remaining: signedKilograms(suspect.remainingGrams),
            })}{' '}
            {suspect.code === null ? null : (
              <a class="code" href={`/thread?code=${encodeURIComponent(suspect.code)}`}>
                {suspect.code}
              </a>
            )}
          </li>
        ))}
      </ol>
      <p class="quiet">{say('account-suspects-advice')}</p>
    </>
  );
}
