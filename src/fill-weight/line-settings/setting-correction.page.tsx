import type { VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act, ActLink } from '../../platform/web/kit/act.js';
import { ChoiceEntry, TextEntry, TimeEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { sayLocally } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import type { NamedRow } from '../../plant/plant-rows.js';
import { FigureEntries } from './figure-entries.js';
import type { LineSettingRow } from './line-settings.js';
import { figuresText } from './setting-texts.js';

interface SettingCorrectionProps {
  readonly viewer: Viewer;
  readonly line: NamedRow;
  readonly setting: LineSettingRow;
  readonly trouble: FormTrouble | null;
}

/** A change of setting that was recorded wrongly, or did not occur. */
export function settingCorrectionPage({ viewer, line, setting, trouble }: SettingCorrectionProps): VNode {
  const { id, changedAt, formatName, why } = setting;
  const facts = { line: line.name, at: changedAt, format: formatName, what: figuresText(setting), why };
  return (
    <Shell title={say('setting-correct-title', { line: line.name })} viewer={viewer}>
      <p class="sentence">{sayLocally('setting-correct-is', facts, viewer.timeZone)}</p>
      <p>{say('setting-correct-says')}</p>
      <EntryForm viewer={viewer} action={`/line-settings/${id}/correct`} trouble={trouble}>
        <ChoiceEntry
          name="why"
          label={say('setting-correct-why')}
          as="tiles"
          required
          trouble={trouble}
          choices={[
            { value: 'incorrect-data', says: say('setting-incorrect') },
            { value: 'did-not-occur', says: say('setting-not-occurred') },
          ]}
        />
        <FigureEntries trouble={trouble} hint={say('setting-as-it-was')} />
        <TimeEntry
          name="changedAt"
          label={say('setting-when')}
          hint={say('setting-as-it-was')}
          timeZone={viewer.timeZone}
          trouble={trouble}
        />
        <TextEntry name="reason" label={say('setting-correct-reason')} required maxLength={300} trouble={trouble} />
        <Act says={say('setting-correct')} />
      </EntryForm>
      <div class="acts">
        <ActLink href={`/lines/${line.id}/settings`} says={say('setting-title', { line: line.name })} />
      </div>
    </Shell>
  );
}
