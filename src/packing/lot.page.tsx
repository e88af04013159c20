import type { VNode } from 'preact';
import { HoldLink } from '../disposition/hold-link.js';
import { say } from '../platform/sentences/sentences.js';
import { ActLink } from '../platform/web/kit/act.js';
import { Table } from '../platform/web/kit/table.js';
import { localText } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import { countsText } from './counts-text.js';
import type { LotRange, LotRow } from './packing-run-rows.js';

interface LotProps {
  readonly viewer: Viewer;
  readonly lot: LotRow;
  readonly ranges: readonly (LotRange & { readonly runNumber: string })[];
}

/** One lot: a code as it stands on the packs, and which packs of which runs carry it. */
export function lotPage({ viewer, lot, ranges }: LotProps): VNode {
  return (
    <Shell title={say('lot-title', { code: lot.code })} viewer={viewer}>
      <p class="sentence">{say('lot-says', { format: lot.formatName, gtin: lot.gtin })}</p>
      <div class="acts">
        <ActLink href={`/thread?code=${encodeURIComponent(lot.code)}`} says={say('lot-follow', { code: lot.code })} />
        <HoldLink viewer={viewer} kind="lot" id={lot.id} />
      </div>
      {ranges.some((range) => !range.isAsIntended) ? <p class="card">{say('lot-was-not-intended')}</p> : null}
      <Table
        caption={say('lot-ranges')}
        columns={[
          { head: say('run-number') },
          { head: say('run-counts') },
          { head: say('run-since') },
          { head: say('lot-intended') },
        ]}
        rows={ranges.map((range) => ({
          key: range.changeId,
          cells: [
            <a href={`/runs/${range.runId}`}>{range.runNumber}</a>,
            countsText(range),
            localText(range.changedAt, viewer.timeZone),
            range.isAsIntended ? say('lot-as-intended') : range.intendedCode,
          ],
        }))}
        empty={say('lot-no-ranges')}
      />
    </Shell>
  );
}
