import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
import { Table } from '../platform/web/kit/table.js';
import { OlderEntries } from '../platform/web/older-entries.js';
import { localText } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import { coverText, propertyText } from './sample-text.js';
import type { SampleResult, SampleRow } from './samples.js';

interface SamplesProps {
  readonly viewer: Viewer;
  readonly samples: readonly SampleRow[];
  readonly results: ReadonlyMap<string, readonly SampleResult[]>;
  readonly next: string | null;
}

/** All samples, latest first. */
export function samplesPage({ viewer, samples, results, next }: SamplesProps): VNode {
  return (
    <Shell title={say('samples-title')} viewer={viewer}>
      <Table
        caption={say('samples-caption')}
        columns={[
          { head: say('lab-column-sample') },
          { head: say('lab-column-stands-for') },
          { head: say('lab-column-taken') },
          { head: say('lab-column-results') },
        ]}
        rows={samples.map((sample) => ({
          key: sample.id,
          cells: [
            <a href={`/samples/${sample.id}`}>{sample.number}</a>,
            coverText(sample, viewer.timeZone),
            localText(sample.takenAt, viewer.timeZone),
            summaryOf(results.get(sample.id) ?? []),
          ],
        }))}
      />
      <OlderEntries path="/samples" older={next} />
    </Shell>
  );
}

function summaryOf(results: readonly SampleResult[]): string {
  const good = results.filter((result) => !result.isVoid);
  if (good.length === 0) return say('no-results-yet');
  return good.map((result) => `${propertyText(result.property)} ${result.amount}`).join(', ');
}
