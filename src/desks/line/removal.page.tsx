import type { VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import { countText } from '../../platform/web/figures-text.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act } from '../../platform/web/kit/act.js';
import { NumberEntry, TextEntry, TimeEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { sayLocally } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { ActPage } from './act.page.js';
import type { LineNow } from './line-rows.js';
import { RemovalEntries } from './removal-entries.js';

interface LineProps {
  readonly viewer: Viewer;
  readonly at: LineNow;
  readonly trouble?: FormTrouble | null | undefined;
}

/** Rejects, samples, sweepings: weighed, or counted in packs. */
export function removalPage({
  viewer,
  at,
  scales,
  trouble,
}: LineProps & { readonly scales: readonly { id: string; name: string }[] }): VNode {
  return (
    <ActPage viewer={viewer} at={at} title={say('line-removals')} startsAtBack>
      <EntryForm viewer={viewer} action={`/line/${at.line.id}/removals`} trouble={trouble} queue="sweepings">
        <RemovalEntries scales={scales} trouble={trouble} />
        <TimeEntry
          name="removedAt"
          label={say('field-if-earlier')}
          hint={say('field-if-earlier-hint')}
          timeZone={viewer.timeZone}
          trouble={trouble}
        />
        <TextEntry
          name="reason"
          label={say('field-late-reason')}
          hint={say('field-late-reason-hint')}
          trouble={trouble}
        />
        <Act says={say('line-record')} />
      </EntryForm>
    </ActPage>
  );
}

/** The counter of the line, and what lies loose; of an earlier time too, of whichever run ran then. */
export function countPage({ viewer, at, trouble }: LineProps): VNode {
  const { run, line } = at;
  const of = { timeZone: viewer.timeZone, trouble };
  return (
    <ActPage viewer={viewer} at={at} title={say('line-to-count')}>
      {run === null ? (
        <p class="sentence">{say('count-no-run')}</p>
      ) : (
        <p>
          {sayLocally('count-last', { packCount: countText(run.packCount), at: run.lastCountedAt }, viewer.timeZone)}
        </p>
      )}
      <EntryForm viewer={viewer} action={`/line/${line.id}/count`} trouble={trouble} queue="count">
        <div class="side-by-side">
          <NumberEntry
            name="packCount"
            label={say('field-counter')}
            unit={say('unit-packs')}
            required
            autofocus
            trouble={trouble}
          />
          <NumberEntry name="loosePackCount" label={say('field-loose')} unit={say('unit-packs')} trouble={trouble} />
        </div>
        <details class="card" open={isOfEarlier(trouble) || run === null}>
          <summary>{say('count-earlier')}</summary>
          <TimeEntry name="countedAt" label={say('field-if-earlier')} hint={say('field-if-earlier-hint')} {...of} />
          <TextEntry
            name="reason"
            label={say('field-late-reason')}
            hint={say('field-late-reason-hint')}
            trouble={trouble}
          />
        </details>
        <Act says={say('line-record')} />
      </EntryForm>
    </ActPage>
  );
}

/** What was entered, or is wrong, is about an earlier time. */
function isOfEarlier(trouble: FormTrouble | null | undefined): boolean {
  const at = trouble?.entered['countedAt'];
  return trouble?.code === 'reason-needed' || (typeof at === 'string' && at !== '');
}
