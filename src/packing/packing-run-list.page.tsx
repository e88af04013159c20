import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
import { OlderEntries } from '../platform/web/older-entries.js';
import { localText } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import { groupedCount } from './counts-text.js';
import type { RunRow } from './packing-run-rows.js';

interface RunListProps {
  readonly viewer: Viewer;
  readonly runs: readonly RunRow[];
  /** The id before which older runs stand; null on the last page. */
  readonly older: string | null;
}

/** Packing runs, newest first. */
export function runListPage({ viewer, runs, older }: RunListProps): VNode {
  const { timeZone } = viewer;
  return (
    <Shell title={say('runs-title')} viewer={viewer}>
      <p class="quiet">{say('runs-says')}</p>
      <div class="table-wrap" tabIndex={0} role="region" aria-label={say('runs-title')}>
        <table>
          <caption>{say('runs-caption', { count: runs.length })}</caption>
          <thead>
            <tr>
              <th scope="col">{say('run-number')}</th>
              <th scope="col">{say('run-line')}</th>
              <th scope="col">{say('run-format')}</th>
              <th scope="col">{say('run-started')}</th>
              <th scope="col">{say('run-closed')}</th>
              <th scope="col" class="number">
                {say('run-packs')}
              </th>
            </tr>
          </thead>
          <tbody>
            {runs.map((run) => (
              <tr key={run.id}>
                <th scope="row">
                  <a href={`/runs/${run.id}`}>{run.number}</a>
                </th>
                <td>{run.lineName}</td>
                <td>{run.formatName}</td>
                <td>{localText(run.startedAt, timeZone)}</td>
                <td>{run.closedAt === null ? say('run-is-open') : localText(run.closedAt, timeZone)}</td>
                <td class="number">{groupedCount(run.packCount)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {runs.length === 0 ? <p>{say('nothing-here')}</p> : null}
      <OlderEntries path="/runs" older={older} />
    </Shell>
  );
}
