import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
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
      {samples.length === 0 ? <p>{say('nothing-here')}</p> : null}
      <div class="table-wrap" tabIndex={0} role="region" aria-label={say('samples-title')}>
        <table>
          <caption>{say('samples-caption')}</caption>
          <thead>
            <tr>
              <th scope="col">{say('lab-column-sample')}</th>
              <th scope="col">{say('lab-column-stands-for')}</th>
              <th scope="col">{say('lab-column-taken')}</th>
              <th scope="col">{say('lab-column-results')}</th>
            </tr>
          </thead>
          <tbody>
            {samples.map((sample) => (
              <tr key={sample.id}>
                <th scope="row">
                  <a href={`/samples/${sample.id}`}>{sample.number}</a>
                </th>
                <td>{coverText(sample, viewer.timeZone)}</td>
                <td>{localText(sample.takenAt, viewer.timeZone)}</td>
                <td>{summaryOf(results.get(sample.id) ?? [])}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <OlderEntries path="/samples" older={next} />
    </Shell>
  );
}

function summaryOf(results: readonly SampleResult[]): string {
  const good = results.filter((result) => !result.isVoid);
  if (good.length === 0) return say('no-results-yet');
  return good.map((result) => `${propertyText(result.property)} ${result.amount}`).join(', ');
}
