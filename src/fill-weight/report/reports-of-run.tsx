import type { VNode } from 'preact';
import { mayDo } from '../../platform/actor.js';
import { say } from '../../platform/sentences/sentences.js';
import { Act } from '../../platform/web/kit/act.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { Table } from '../../platform/web/kit/table.js';
import { localText } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import type { IssuedReport } from './issued-reports.js';

interface ReportsProps {
  readonly viewer: Viewer;
  readonly run: { readonly id: string };
  readonly reports: readonly IssuedReport[];
}

/** The reports of a run that were issued, and where another one is asked for. */
export function ReportsOfRun({ viewer, run, reports }: ReportsProps): VNode {
  return (
    <>
      <h2>{say('weight-reports')}</h2>
      <Table
        caption={say('weight-reports')}
        hasHiddenCaption
        columns={[{ head: say('weight-report-issued-at') }]}
        rows={reports.map(({ paperId, issuedAt }) => ({
          key: paperId,
          cells: [
            <a key="file" href={`/papers/${paperId}/file`}>
              {say('weight-report-open-file', { at: localText(issuedAt, viewer.timeZone) })}
            </a>,
          ],
        }))}
      />
      {mayDo(viewer.actor.roles, 'weigh-packs') ? (
        <EntryForm viewer={viewer} action={`/runs/${run.id}/weights/report`}>
          <p class="quiet">{say('weight-report-issue-says')}</p>
          <Act says={say('weight-report-issue')} tone="plain" />
        </EntryForm>
      ) : null}
    </>
  );
}
