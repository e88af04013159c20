import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
import { Table } from '../platform/web/kit/table.js';
import { localText } from '../platform/web/local-text.js';
import { threadLink } from './thread-text.js';
import type { RuledOutLine } from './thread.js';

/** So many bags are named at once; more are folded away. */
const namedAtOnce = 12;

interface RuledOutProps {
  readonly lines: readonly RuledOutLine[];
  readonly timeZone: string;
}

/** Which bags of the hopper periods cannot be in it, and why: as sure a statement as *sure*. */
export function RuledOut({ lines, timeZone }: RuledOutProps): VNode | null {
  if (lines.length === 0) return null;
  const count = lines.reduce((sum, { bagNumbers }) => sum + bagNumbers.length, 0);
  return (
    <>
      <Table
        caption={say('thread-ruled-out', { count })}
        columns={[
          { head: say('thread-ruled-out-hopper') },
          { head: say('thread-ruled-out-count'), align: 'number' },
          { head: say('thread-ruled-out-why') },
          { head: say('thread-ruled-out-bags') },
        ]}
        rows={lines.map((line) => ({
          key: `${line.periodId} ${line.reason}`,
          isLoud: line.reason === 'records-impossible',
          cells: [
            <a key="period" href={`/hopper-periods/${line.periodId}`}>
              {say('thread-ruled-out-period', { hopper: line.hopperCode, number: line.periodNumber })}
            </a>,
            line.bagNumbers.length,
            reasonText(line, timeZone),
            <BagNumbers key="bags" numbers={line.bagNumbers} />,
          ],
        }))}
      />
      <p class="quiet">{say('thread-ruled-out-says')}</p>
    </>
  );
}

function reasonText({ reason, firstTippedAt, lastTippedAt }: RuledOutLine, timeZone: string): string {
  const local = (at: string | null): string => (at === null ? '–' : localText(at, timeZone));
  return say(`thread-ruled-out-${reason}`, { first: local(firstTippedAt), last: local(lastTippedAt) });
}

function BagNumbers({ numbers }: { readonly numbers: readonly string[] }): VNode {
  const named = <BagLinks numbers={numbers.slice(0, namedAtOnce)} />;
  if (numbers.length <= namedAtOnce) return named;
  return (
    <>
      {named}
      <details>
        <summary>{say('thread-ruled-out-more', { count: numbers.length - namedAtOnce })}</summary>
        <BagLinks numbers={numbers.slice(namedAtOnce)} />
      </details>
    </>
  );
}

function BagLinks({ numbers }: { readonly numbers: readonly string[] }): VNode {
  return (
    <span class="codes">
      {numbers.map((number, place) => (
        <span key={number}>
          {place === 0 ? '' : ', '}
          <a href={threadLink(number)}>{number}</a>
        </span>
      ))}
    </span>
  );
}
