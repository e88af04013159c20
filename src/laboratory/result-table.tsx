import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
import { Table } from '../platform/web/kit/table.js';
import { localText } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import { propertyText } from './sample-text.js';
import type { SampleResult } from './samples.js';

interface ResultTableProps {
  readonly results: readonly SampleResult[];
  readonly viewer: Viewer;
}

/** The results of a sample, the void ones and retests too. */
export function ResultTable({ results, viewer }: ResultTableProps): VNode {
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
      empty={say('no-results-yet')}
    />
  );
}

function noteOn(result: SampleResult): string {
  if (result.isVoid) return say('lab-note-void');
  return result.isRetest ? say('lab-note-retest') : '';
}
