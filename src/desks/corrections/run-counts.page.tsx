import type { VNode } from 'preact';
import type { CountRow, RunRow } from '../../packing/packing-run-rows.js';
import { say } from '../../platform/sentences/sentences.js';
import { countText } from '../../platform/web/figures-text.js';
import { ActLink } from '../../platform/web/kit/act.js';
import { Table } from '../../platform/web/kit/table.js';
import { localText } from '../../platform/web/local-text.js';
import { OlderEntries } from '../../platform/web/older-entries.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';

interface RunCountsProps {
  readonly viewer: Viewer;
  readonly run: RunRow;
  readonly counts: readonly CountRow[];
  readonly older: string | null;
  readonly mayCorrect: boolean;
}

/** What was counted of a run, the last recorded first, each with the way to put it right. */
export function runCountsPage({ viewer, run, counts, older, mayCorrect }: RunCountsProps): VNode {
  return (
    <Shell title={say('counts-list-title', { run: run.number })} viewer={viewer}>
      <div class="acts">
        <ActLink href={`/runs/${run.id}`} says={say('counts-list-back', { run: run.number })} />
      </div>
      <Table
        caption={say('counts-list')}
        columns={[
          { head: say('counts-list-at') },
          { head: say('counts-list-packs'), align: 'number' },
          { head: say('counts-list-occasion') },
          ...(mayCorrect ? [{ head: say('counts-list-correct') }] : []),
        ]}
        rows={counts.map((count) => ({
          key: count.id,
          cells: [
            localText(count.countedAt, viewer.timeZone),
            countText(count.packCount),
            say(`counted-at-${count.occasion}`),
            ...(mayCorrect ? [<Correct count={count} timeZone={viewer.timeZone} />] : []),
          ],
        }))}
      />
      <OlderEntries path={`/runs/${run.id}/counts`} older={older} />
    </Shell>
  );
}

/** The first count of a run is its start: it is corrected with the run. */
function Correct({ count, timeZone }: { readonly count: CountRow; readonly timeZone: string }): VNode {
  if (count.occasion === 'start') return <>–</>;
  const says = say('counts-list-correct-one', { at: localText(count.countedAt, timeZone) });
  return (
    <a href={`/counts/${count.id}/correct`} aria-label={says}>
      {say('counts-list-correct')}
    </a>
  );
}
