import type { VNode } from 'preact';
import { mayDo } from '../../platform/actor.js';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act, ActLink } from '../../platform/web/kit/act.js';
import { HiddenEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { Table } from '../../platform/web/kit/table.js';
import { sayLocally } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import { nameOfField } from '../../platform/web/kit/entry-form.js';
import { clockText } from './clock-text.js';
import type { DryRun } from '../receive-weights.js';
import { gramsText } from '../weight-text.js';
import type { BroughtFile } from './weight-files.js';

interface DryRunProps {
  readonly viewer: Viewer;
  readonly file: BroughtFile;
  readonly found: DryRun;
  readonly trouble: FormTrouble | null;
}

/** What storing a file would bring: counts, the first lines as they were read, runs, and lines in error with why. */
export function dryRunPage({ viewer, file, found, trouble }: DryRunProps): VNode {
  const { answer } = found;
  return (
    <Shell title={say('dry-run-title', { name: file.name })} viewer={viewer}>
      <p class="sentence">
        {say('dry-run-counts', {
          lines: answer.lineCount,
          fresh: answer.acceptedCount,
          known: answer.repeatedCount,
          wrong: answer.refusedCount,
        })}
      </p>
      {file.layout.sequenceColumn === null ? <p>{say('dry-run-by-time')}</p> : null}
      <StoreForm viewer={viewer} file={file} found={found} trouble={trouble} />
      <FirstLines file={file} found={found} />
      <Table
        caption={say('dry-run-runs')}
        columns={[{ head: say('dry-run-run') }, { head: say('dry-run-weights'), align: 'number' }]}
        rows={found.runs.map(({ number, weightCount }) => ({ key: number, cells: [number, weightCount] }))}
      />
      <Table
        caption={say('dry-run-wrong', { shown: answer.problems.length, wrong: answer.refusedCount })}
        empty={say('dry-run-none-wrong')}
        columns={[
          { head: say('dry-run-line'), align: 'number' },
          { head: say('dry-run-field') },
          { head: say('dry-run-why') },
        ]}
        rows={answer.problems.map(({ line, field, code, facts }, place) => ({
          key: String(place),
          cells: [line ?? '', field === '' ? '' : nameOfField(field), sayLocally(code, facts, viewer.timeZone)],
        }))}
      />
      <p class="acts">
        <ActLink href={`/set-up/pack-weighers/${file.weigher.id}/files`} says={say('dry-run-other')} />
      </p>
    </Shell>
  );
}

/** One act: what is good is stored; that lines are left out stands on it. */
function StoreForm({ viewer, file, found, trouble }: DryRunProps): VNode | null {
  const { acceptedCount: fresh, refusedCount: wrong } = found.answer;
  if (fresh === 0) return <p class="sentence">{say('dry-run-nothing-new')}</p>;
  if (!mayDo(viewer.actor.roles, 'bring-weight-files')) return null;
  const action = `/set-up/pack-weighers/${file.weigher.id}/files/${file.id}`;
  return (
    <EntryForm viewer={viewer} action={action} trouble={trouble} id="form-store">
      {wrong > 0 ? <HiddenEntry name="skipsFaults" value="on" /> : null}
      <Act
        says={say(wrong > 0 ? 'dry-run-store-rest' : 'dry-run-store', { fresh, wrong })}
        tone={wrong > 0 ? 'careful' : 'asked'}
      />
    </EntryForm>
  );
}

function FirstLines({ file, found }: Pick<DryRunProps, 'file' | 'found'>): VNode {
  return (
    <Table
      caption={say('dry-run-first')}
      columns={[
        { head: say('dry-run-line'), align: 'number' },
        { head: say('dry-run-sequence'), align: 'number' },
        { head: say('dry-run-at', { zone: file.layout.timeZone }) },
        { head: say('dry-run-net'), align: 'number' },
        { head: say('dry-run-head'), align: 'number' },
        { head: say('dry-run-rejected') },
      ]}
      rows={found.first.map((row) => ({
        key: String(row.line),
        cells: [
          row.line,
          row.sequence,
          clockText(row.atCentiseconds, file.layout.timeZone),
          say('weigher-grams', { grams: gramsText(row.netMilligrams, 3) }),
          row.head ?? '–',
          row.rejected === null ? '–' : say(row.rejected ? 'weigher-yes' : 'weigher-no'),
        ],
      }))}
    />
  );
}
