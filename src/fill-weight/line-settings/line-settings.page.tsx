import type { VNode } from 'preact';
import { mayDo } from '../../platform/actor.js';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act, ActLink } from '../../platform/web/kit/act.js';
import { ChoiceEntry, TextEntry, TimeEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { Table } from '../../platform/web/kit/table.js';
import { localText } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import type { NamedRow } from '../../plant/plant-rows.js';
import type { LineSettingRow } from './line-settings.js';
import { FigureEntries } from './figure-entries.js';
import { figuresText } from './setting-texts.js';

interface LineSettingsProps {
  readonly viewer: Viewer;
  readonly line: NamedRow;
  readonly settings: readonly LineSettingRow[];
  /** Who set it, by id. */
  readonly names: ReadonlyMap<string, string>;
  readonly formats: readonly { readonly id: string; readonly name: string }[];
  /** What was asked for; null: that of the run of then, or it is to be chosen. */
  readonly formatId: string | null;
  /** The format that runs now; null: none. */
  readonly running: string | null;
  /** A setpoint that was advised and is taken over; null: none. */
  readonly advisedGrams: string | null;
  readonly trouble: FormTrouble | null;
}

/** What a line was set to, the latest first, and what it is set to from now on. */
export function lineSettingsPage(props: LineSettingsProps): VNode {
  const { viewer, line, settings, names } = props;
  const mayCorrect = mayDo(viewer.actor.roles, 'correct');
  return (
    <Shell title={say('setting-title', { line: line.name })} viewer={viewer}>
      <p class="quiet">{say('setting-says')}</p>
      {mayDo(viewer.actor.roles, 'run-line') ? <SettingForm {...props} /> : null}
      <Table
        caption={say('setting-list')}
        columns={[
          { head: say('setting-when') },
          { head: say('setting-format') },
          { head: say('setting-what') },
          { head: say('setting-why') },
          { head: say('setting-who') },
          ...(mayCorrect ? [{ head: say('setting-correct') }] : []),
        ]}
        rows={settings.map((setting) => ({
          key: setting.id,
          cells: [
            localText(setting.changedAt, viewer.timeZone),
            setting.formatName,
            figuresText(setting),
            setting.why,
            setting.setBy === null ? '–' : (names.get(setting.setBy) ?? '–'),
            ...(mayCorrect ? [<a href={`/line-settings/${setting.id}/correct`}>{say('setting-correct')}</a>] : []),
          ],
        }))}
        empty={say('setting-none')}
      />
      <div class="acts">
        <ActLink href={`/line/${line.id}`} says={say('setting-to-line', { line: line.name })} />
        <ActLink href={`/lines/${line.id}/fill`} says={say('line-fill-link', { line: line.name })} />
      </div>
    </Shell>
  );
}

function SettingForm({ viewer, line, formats, formatId, running, advisedGrams, trouble }: LineSettingsProps): VNode {
  return (
    <section class="card" aria-labelledby="new-setting">
      <h2 id="new-setting">{say('setting-new')}</h2>
      <p>{say(advisedGrams === null ? 'setting-set-first' : 'setting-set-advised-first')}</p>
      <EntryForm
        viewer={viewer}
        action={`/lines/${line.id}/settings`}
        trouble={trouble}
        queue="setting"
        id="setting-form"
      >
        <ChoiceEntry
          name="formatId"
          label={say('setting-format')}
          required={running === null}
          none={running === null ? undefined : say('setting-format-of-run', { format: running })}
          value={formatId ?? undefined}
          trouble={trouble}
          choices={formats.map(({ id, name }) => ({ value: id, says: name }))}
        />
        <FigureEntries trouble={trouble} setpoint={advisedGrams ?? undefined} hint={say('setting-left-alone')} />
        <TextEntry
          name="reason"
          label={say('setting-why')}
          hint={say('setting-why-hint')}
          value={advisedGrams === null ? undefined : say('setting-as-advised')}
          required
          maxLength={300}
          trouble={trouble}
        />
        <TimeEntry
          name="changedAt"
          label={say('setting-when')}
          hint={say('setting-now')}
          timeZone={viewer.timeZone}
          trouble={trouble}
        />
        <Act says={say('setting-record')} />
      </EntryForm>
    </section>
  );
}
