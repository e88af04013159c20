import type { VNode } from 'preact';
import { mayDo } from '../../platform/actor.js';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act } from '../../platform/web/kit/act.js';
import { ChoiceEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { Table } from '../../platform/web/kit/table.js';
import { localText } from '../../platform/web/local-text.js';
import { OlderEntries } from '../../platform/web/older-entries.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import { formKinds } from './form-kinds.js';
import { isClosed, type FormRow } from './form-rows.js';
import type { PaperForm } from './paper-forms.js';

interface PaperFormsProps {
  readonly viewer: Viewer;
  readonly forms: readonly PaperForm[];
  readonly older: string | null;
  readonly lines: readonly { readonly id: string; readonly name: string }[];
  /** The line that is chosen to begin with. */
  readonly lineId: string | null;
  /** Checks are planned at the site; else nothing stands on a sheet of them. */
  readonly isChecked: boolean;
  readonly trouble: FormTrouble | null;
}

/** Sheets for a night without the server: printing some ahead, and those that were printed. */
export function paperFormsPage({ viewer, forms, older, ...printing }: PaperFormsProps): VNode {
  return (
    <Shell title={say('paper-forms-title')} viewer={viewer}>
      <p>{say('paper-forms-says')}</p>
      {mayDo(viewer.actor.roles, 'keep-paper-forms') ? <PrintForm viewer={viewer} {...printing} /> : null}
      <Table
        caption={say('paper-forms-printed')}
        columns={[
          { head: say('paper-forms-sheet'), align: 'code' },
          { head: say('paper-forms-for') },
          { head: say('paper-forms-when') },
          { head: say('paper-forms-rows') },
          { head: say('paper-forms-print') },
        ]}
        rows={forms.map((form) => ({
          key: form.id,
          cells: [
            <a key="sheet" href={`/paper-forms/${form.facts.number}`}>
              {form.facts.number}
            </a>,
            `${say(`form-kind-${form.facts.kind}`)} · ${form.facts.lineName}`,
            localText(form.issuedAt, viewer.timeZone),
            rowsText(form.rows),
            <a key="file" href={`/papers/${form.id}/file`}>
              {say('paper-forms-open')}
            </a>,
          ],
        }))}
      />
      <OlderEntries path="/paper-forms" older={older} />
    </Shell>
  );
}

/** How far a sheet is keyed in, in words. */
export function rowsText(rows: readonly FormRow[]): string {
  const count = (...states: readonly FormRow['state'][]): number =>
    rows.filter(({ state }) => states.includes(state)).length;
  const facts = {
    keyed: count('keyed', 'begun'),
    struck: count('struck'),
    left: count('blank'),
    begun: count('begun'),
  };
  if (isClosed(rows)) return say('paper-rows-closed', facts);
  if (facts.left === rows.length) return say('paper-rows-blank', facts);
  return say(facts.begun === 0 ? 'paper-rows-left' : 'paper-rows-begun', facts);
}

function PrintForm({
  viewer,
  lines,
  lineId,
  isChecked,
  trouble,
}: Pick<PaperFormsProps, 'viewer' | 'lines' | 'lineId' | 'isChecked' | 'trouble'>): VNode {
  const sent = trouble?.entered['kinds'];
  const ticked = trouble === null ? formKinds.filter((kind) => isChecked || kind !== 'checks') : [sent ?? []].flat();
  return (
    <EntryForm viewer={viewer} action="/paper-forms" trouble={trouble} id="print">
      <ChoiceEntry
        name="lineId"
        label={say('paper-forms-line')}
        as="tiles"
        choices={lines.map(({ id, name }) => ({ value: id, says: name }))}
        value={lineId ?? (lines.length === 1 ? lines[0]?.id : undefined)}
        required
        trouble={trouble}
      />
      <fieldset class="tiles" data-field="kinds" id="field-kinds" tabIndex={-1}>
        <legend>{say('paper-forms-kinds')}</legend>
        <div>
          {formKinds.map((kind) => (
            <label key={kind} class="tile">
              <input type="checkbox" name="kinds" value={kind} checked={ticked.includes(kind)} />
              <span>{say(`form-kind-${kind}`)}</span>
            </label>
          ))}
        </div>
        <p class="wrong" hidden={trouble?.fields['kinds'] === undefined}>
          {trouble?.fields['kinds']}
        </p>
      </fieldset>
      <Act says={say('paper-forms-act')} />
    </EntryForm>
  );
}
