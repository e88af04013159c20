import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
import { localText } from '../platform/web/local-text.js';
import type { AccountLine, AccountView, PackagingLine } from './account-view.js';
import { kilograms } from './kilograms.js';

/** Every line of an account with the record that it was read from, and the two sums. */
export function LinesTable({ account, timeZone }: { account: AccountView; timeZone: string }): VNode {
  return (
    <div class="table-wrap" tabIndex={0} role="region" aria-label={say('account-lines')}>
      <table>
        <caption>{say('account-lines')}</caption>
        <thead>
          <tr>
            <th scope="col">{say('account-what')}</th>
            <th scope="col">{say('account-record')}</th>
            <th scope="col">{say('account-at')}</th>
            <th scope="col" class="number">
              {say('account-in')}
            </th>
            <th scope="col" class="number">
              {say('account-out')}
            </th>
            <th scope="col" class="number">
              {say('account-give-or-take')}
            </th>
            <th scope="col">{say('account-remarks')}</th>
          </tr>
        </thead>
        <tbody>
          {account.lines.map((line) => (
            <LineRow key={`${line.kind} ${line.recordId} ${line.at}`} line={line} timeZone={timeZone} />
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row" colSpan={3}>
              {say('account-sum')}
            </th>
            <td class="number">{kilograms(account.inGrams)}</td>
            <td class="number">{kilograms(account.outGrams)}</td>
            <td />
            <td />
          </tr>
        </tfoot>
      </table>
    </div>
  );
}

function LineRow({ line, timeZone }: { line: AccountLine; timeZone: string }): VNode {
  const grams = Math.round(Math.hypot(line.standardMilligrams, line.sharedStandardMilligrams) / 1000);
  return (
    <tr>
      <th scope="row">{say(`account-line-${line.kind}`)}</th>
      <td>{line.code === null ? say('account-no-code') : <ThreadLink code={line.code} />}</td>
      <td>{localText(line.at, timeZone)}</td>
      <td class="number">{line.side === 'in' ? kilograms(line.grams) : ''}</td>
      <td class="number">{line.side === 'out' ? kilograms(line.grams) : ''}</td>
      <td class="number">{`± ${kilograms(grams)}`}</td>
      <td>{remarksOn(line).join(' ')}</td>
    </tr>
  );
}

function ThreadLink({ code }: { code: string }): VNode {
  return (
    <a class="code" href={`/thread?code=${encodeURIComponent(code)}`}>
      {code}
    </a>
  );
}

/** What a reader must know of a line to add it up again. */
export function remarksOn(line: AccountLine): readonly string[] {
  const { packs } = line;
  const remarks: string[] = [];
  if (packs !== null) {
    const { fromCount, toCount, meanMilligrams } = packs;
    const mean = (meanMilligrams / 1000).toFixed(1);
    remarks.push(say('account-remark-count', { fromCount, toCount, packs: toCount - fromCount, mean }));
    if (packs.loosePackCount !== null) remarks.push(say('account-remark-loose', { packs: packs.loosePackCount }));
    if (packs.doubtPackCount > 0) remarks.push(say('account-remark-doubt', { packs: packs.doubtPackCount }));
  }
  if (line.basis === 'assumed') remarks.push(say('account-remark-assumed'));
  if (line.isDoubtful) remarks.push(say('account-remark-doubtful'));
  return remarks;
}

/** What the accepted packs were packed in, by lot. */
export function PackagingTable({ packaging }: { packaging: readonly PackagingLine[] }): VNode {
  return (
    <div class="table-wrap" tabIndex={0} role="region" aria-label={say('account-packaging')}>
      <table>
        <caption>{say('account-packaging')}</caption>
        <thead>
          <tr>
            <th scope="col">{say('account-packaging-lot')}</th>
            <th scope="col">{say('account-what')}</th>
            <th scope="col" class="number">
              {say('account-packaging-count')}
            </th>
          </tr>
        </thead>
        <tbody>
          {packaging.map(({ filmLotId, code, kind, packCount }) => (
            <tr key={filmLotId}>
              <th scope="row">
                <ThreadLink code={code} />
              </th>
              <td>{say(`account-packaging-${kind}`)}</td>
              <td class="number">{packCount}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
