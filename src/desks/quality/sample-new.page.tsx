import type { VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act } from '../../platform/web/kit/act.js';
import { ChoiceEntry, TextEntry, TimeEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';

interface SampleNewProps {
  readonly viewer: Viewer;
  readonly dryers: readonly { readonly id: string; readonly name: string; readonly code: string }[];
  readonly trouble: FormTrouble | null;
}

/** A sample is taken: what it stands for decides which bags its results speak of. */
export function sampleNewPage({ viewer, dryers, trouble }: SampleNewProps): VNode {
  const { timeZone } = viewer;
  return (
    <Shell title={say('sample-new')} viewer={viewer}>
      <p class="sentence">{say('sample-new-says')}</p>
      <section class="card">
        <EntryForm viewer={viewer} action="/quality/samples/new" trouble={trouble}>
          <ChoiceEntry
            name="standsFor"
            label={say('sample-stands-for')}
            as="tiles"
            choices={(['bag', 'hour', 'shift'] as const).map((value) => ({
              value,
              says: say(`sample-for-${value}`),
              about: say(`sample-for-${value}-about`),
            }))}
            trouble={trouble}
            required
          />
          <TextEntry
            name="bag"
            label={say('sample-bag')}
            hint={say('sample-bag-hint')}
            maxLength={40}
            trouble={trouble}
            isCode
          />
          <ChoiceEntry
            name="dryerId"
            label={say('sample-dryer')}
            hint={say('sample-dryer-hint')}
            choices={dryers.map(({ id, name, code }) => ({ value: id, says: name, about: code }))}
            trouble={trouble}
          />
          <TimeEntry
            name="fromAt"
            label={say('sample-from')}
            hint={say('sample-from-hint')}
            timeZone={timeZone}
            trouble={trouble}
          />
          <TimeEntry
            name="takenAt"
            label={say('sample-when')}
            hint={say('results-when-hint')}
            timeZone={timeZone}
            trouble={trouble}
          />
          <TextEntry
            name="reason"
            label={say('results-late')}
            hint={say('results-late-hint')}
            maxLength={300}
            trouble={trouble}
          />
          <Act says={say('sample-act')} />
        </EntryForm>
      </section>
    </Shell>
  );
}
