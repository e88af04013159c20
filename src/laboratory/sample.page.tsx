import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
import { localText } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import { ResultTable } from './result-table.js';
import { coverText } from './sample-text.js';
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
      <ResultTable results={results} viewer={viewer} />
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
