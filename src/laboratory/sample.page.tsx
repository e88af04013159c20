import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
import { Table } from '../platform/web/kit/table.js';
import { localText } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import { coverText, propertyText } from './sample-text.js';
import type { SampleResult, SampleRow } from './samples.js';

interface SampleProps {
  readonly viewer: Viewer;
  readonly sample: SampleRow;
  readonly results: readonly SampleResult[];
  readonly bags: readonly { readonly id: string; readonly number: string }[];
}

/** One sample: what it stands for, its results, its bags. */
export function samplePage({ viewer, sample, results, bags }: SampleProps): VNode {
  return (
    <Shell title={say('sample-title', { sample: sample.number })} viewer={viewer}>
      <p>{coverText(sample, viewer.timeZone)}</p>
      <p>{say('sample-taken', { at: localText(sample.takenAt, viewer.timeZone) })}</p>
      <h2>{say('lab-column-results')}</h2>
      {results.length === 0 ? <p>{say('no-results-yet')}</p> : <ResultTable results={results} viewer={viewer} />}
      <h2>{say('sample-bags')}</h2>
      {bags.length === 0 ? <p>{say('sample-no-bags')}</p> : null}
      <ul>
        {bags.map((bag) => (
          <li key={bag.id}>
            <a href={`/bags/${bag.id}`}>{bag.number}</a>
          </li>
        ))}
      </ul>
    </Shell>
  );
}

function ResultTable({ results, viewer }: { results: readonly SampleResult[]; viewer: Viewer }): VNode {
  return (
    <Table
      caption={say('results-caption')}
      columns={[
        { head: say('lab-column-property') },
        { head: say('lab-column-method') },
        { head: say('lab-column-amount'), align: 'number' },
        { head: say('lab-column-analysed') },
        { head: say('lab-column-note') },
      ]}
      rows={results.map((result) => ({
        key: result.id,
        cells: [
          propertyText(result.property),
          result.method,
          result.amount,
          localText(result.analysedAt, viewer.timeZone),
          noteOn(result),
        ],
      }))}
    />
  );
}

function noteOn(result: SampleResult): string {
  if (result.isVoid) return say('lab-note-void');
  return result.isRetest ? say('lab-note-retest') : '';
}
