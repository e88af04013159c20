import type { ComponentChildren, VNode } from 'preact';
import { decimalText } from '../platform/sentences/decimal-text.js';
import { say } from '../platform/sentences/sentences.js';
import { countText } from '../platform/web/figures-text.js';
import { Table } from '../platform/web/kit/table.js';
import { localText } from '../platform/web/local-text.js';
import type { AccountLine, AccountView, PackagingLine } from './account-view.js';
import { kilograms, uncertainKilograms } from './kilograms.js';

/** Every line of an account with the record that it was read from, and the two sums. */
export function LinesTable({
  account,
  onPaper,
  timeZone,
}: {
  readonly account: AccountView;
  readonly onPaper: readonly string[];
  readonly timeZone: string;
}): VNode {
  return (
    <Table
      caption={say('account-lines')}
      columns={[
        { head: say('account-what') },
        { head: say('account-record') },
        { head: say('account-at') },
        { head: say('account-in'), align: 'number' },
        { head: say('account-out'), align: 'number' },
        { head: say('account-give-or-take'), align: 'number' },
        { head: say('account-remarks') },
      ]}
      rows={account.lines.map((line) => ({
        key: `${line.kind} ${line.recordId} ${line.at}`,
        cells: cellsOf(line, onPaper.includes(line.recordId), timeZone),
      }))}
      foot={[say('account-sum'), '', '', kilograms(account.inGrams), kilograms(account.outGrams), '', '']}
    />
  );
}

function cellsOf(line: AccountLine, isOnPaper: boolean, timeZone: string): readonly ComponentChildren[] {
  const grams = Math.round(Math.hypot(line.standardMilligrams, line.sharedStandardMilligrams) / 1000);
  return [
    say(`account-line-${line.kind}`),
    line.code === null ? say('account-no-code') : <ThreadLink code={line.code} />,
    localText(line.at, timeZone),
    line.side === 'in' ? kilograms(line.grams) : '',
    line.side === 'out' ? kilograms(line.grams) : '',
    `± ${uncertainKilograms(grams)}`,
    [...(isOnPaper ? [paperRemark(line)] : []), ...remarksOn(line)].join(' '),
  ];
}

/** It was written by hand first: the sheet is the record to look at. */
function paperRemark({ packs }: AccountLine): string {
  return say(packs === null ? 'account-remark-paper' : 'account-remark-counted-on-paper');
}

/** A code that leads to its thread. */
export function ThreadLink({ code }: { code: string }): VNode {
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
    const mean = decimalText((meanMilligrams / 1000).toFixed(1));
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
    <Table
      caption={say('account-packaging')}
      columns={[
        { head: say('account-packaging-lot') },
        { head: say('account-what') },
        { head: say('account-packaging-count'), align: 'number' },
      ]}
      rows={packaging.map(({ filmLotId, code, kind, packCount }) => ({
        key: filmLotId,
        cells: [<ThreadLink code={code} />, say(`account-packaging-${kind}`), countText(packCount)],
      }))}
    />
  );
}
