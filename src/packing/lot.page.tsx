import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
import { localText } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import { groupedCount } from './counts-text.js';
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
      <p>
        <a href={`/thread?code=${encodeURIComponent(lot.code)}`}>{say('lot-follow', { code: lot.code })}</a>
      </p>
      {ranges.some((range) => !range.isAsIntended) ? <p class="card">{say('lot-was-not-intended')}</p> : null}
      <div class="table-wrap" tabIndex={0} role="region" aria-label={say('lot-ranges')}>
        <table>
          <caption>{say('lot-ranges')}</caption>
          <thead>
            <tr>
              <th scope="col">{say('run-number')}</th>
              <th scope="col">{say('run-counts')}</th>
              <th scope="col">{say('run-since')}</th>
              <th scope="col">{say('lot-intended')}</th>
            </tr>
          </thead>
          <tbody>
            {ranges.map((range) => (
              <tr key={range.changeId}>
                <th scope="row">
                  <a href={`/runs/${range.runId}`}>{range.runNumber}</a>
                </th>
                <td>
                  {range.toCount === null
                    ? say('counts-from-on', { from: groupedCount(range.fromCount + 1) })
                    : say('counts-from-to', {
                        from: groupedCount(range.fromCount + 1),
                        to: groupedCount(range.toCount),
                      })}
                </td>
                <td>{localText(range.changedAt, viewer.timeZone)}</td>
                <td>{range.isAsIntended ? say('lot-as-intended') : range.intendedCode}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {ranges.length === 0 ? <p>{say('lot-no-ranges')}</p> : null}
    </Shell>
  );
}
