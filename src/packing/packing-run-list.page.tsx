import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
import { Table } from '../platform/web/kit/table.js';
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
      <Table
        caption={say('runs-caption', { count: runs.length })}
        columns={[
          { head: say('run-number') },
          { head: say('run-line') },
          { head: say('run-format') },
          { head: say('run-started') },
          { head: say('run-closed') },
          { head: say('run-packs'), align: 'number' },
        ]}
        rows={runs.map((run) => ({
          key: run.id,
          cells: [
            <a href={`/runs/${run.id}`}>{run.number}</a>,
            run.lineName,
            run.formatName,
            localText(run.startedAt, timeZone),
            run.closedAt === null ? say('run-is-open') : localText(run.closedAt, timeZone),
            groupedCount(run.packCount),
          ],
        }))}
      />
      <OlderEntries path="/runs" older={older} />
    </Shell>
  );
}
