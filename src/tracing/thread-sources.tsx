import type { VNode } from 'preact';
import type { BagResult } from '../laboratory/bag-results.js';
import { say } from '../platform/sentences/sentences.js';
import { Table } from '../platform/web/kit/table.js';
import { StateMark, type MarkedState } from '../platform/web/state-mark.js';
import { gramPreciseText, shiftText, threadLink } from './thread-text.js';
import type { Amounts, SourceLine } from './thread.js';

interface SourcesProps {
  /** Code of the caption. */
  readonly caption: string;
  readonly sources: readonly SourceLine[];
  /** By the bag of each. */
  readonly results: ReadonlyMap<string, readonly BagResult[]>;
}

/** The surest first; what is only possible stands in a table of its own, below. */
export function Sources({ caption, sources, results }: SourcesProps): VNode | null {
  if (sources.length === 0) return null;
  return (
    <Table
      caption={say(caption, { count: sources.length })}
      columns={[
        { head: say('thread-bag'), align: 'code' },
        { head: say('thread-dryer-shift') },
        ...amountColumns(),
        { head: say('thread-results') },
        { head: say('thread-state') },
      ]}
      rows={sources.map((source) => ({
        key: source.bagId,
        cells: [
          <span key="bag">
            <a href={threadLink(source.bagNumber)}>{source.bagNumber}</a>
            <br />
            <small>
              {source.netGrams === null ? '' : say('thread-net', { net: gramPreciseText(source.netGrams) })}
            </small>
          </span>,
          originText(source),
          ...amountCells(source),
          <Results key="results" results={results.get(source.bagId) ?? []} />,
          <States key="states" source={source} />,
        ],
      }))}
    />
  );
}

function originText({ dryerShift, dryerCode, supplierLot }: SourceLine): string {
  if (dryerShift === null) return supplierLot ?? say('thread-no-dryer-shift');
  return say('thread-dryer-and-shift', { dryer: dryerCode, shift: shiftText(dryerShift) });
}

function Results({ results }: { readonly results: readonly BagResult[] }): VNode {
  if (results.length === 0) return <span>{say('thread-no-result')}</span>;
  return (
    <>
      {results.map(({ id, sampleId, property, amount, method }) => (
        <div key={id}>
          <a href={`/samples/${sampleId}`}>
            {say('thread-result', { property: say(`property-${property}`), amount, method })}
          </a>
        </div>
      ))}
    </>
  );
}

function States({ source }: { readonly source: SourceLine }): VNode {
  return (
    <>
      <StateMark state={stateOf(source)} />
      {source.isDoubtful ? (
        <div>
          <StateMark state="doubtful" />
        </div>
      ) : null}
    </>
  );
}

function stateOf(source: SourceLine): MarkedState {
  if (source.isOnHold) return 'on-hold';
  const known: readonly MarkedState[] = ['waiting', 'released', 'rejected', 'concession'];
  return known.find((state) => state === source.decision) ?? 'waiting';
}

/** Heads above the three amounts of a link. */
export function amountColumns(): { head: string; align: 'number' }[] {
  return ['thread-least', 'thread-likely', 'thread-most'].map((code) => ({ head: say(code), align: 'number' }));
}

/** The three amounts of a link, and its word. */
export function amountCells(amounts: Amounts): (string | VNode)[] {
  return [
    gramPreciseText(amounts.leastGrams),
    gramPreciseText(amounts.likelyGrams),
    <span key="most">
      {gramPreciseText(amounts.mostGrams)}
      <br />
      <small>{say(`link-${amounts.word}`)}</small>
    </span>,
  ];
}
