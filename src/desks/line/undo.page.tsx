import type { VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act } from '../../platform/web/kit/act.js';
import { HiddenEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { sayLocally } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { RippleSummary, RippleTables } from '../../tracing/ripple-view.js';
import type { Ripple } from '../../tracing/ripple.js';
import { ActPage } from './act.page.js';
import type { LineNow } from './line-rows.js';
import type { LastEntry } from './undo-last.js';

interface UndoProps {
  readonly viewer: Viewer;
  readonly at: LineNow;
  readonly entry: LastEntry | null;
  /** What it changes if it did not happen; null where that could not be looked at. */
  readonly ripple: Ripple | null;
  readonly trouble: FormTrouble | null;
}

/** One's own last entry, and the question that decides: did it happen? */
export function undoPage({ viewer, at, entry, ripple, trouble }: UndoProps): VNode {
  const isTip = entry?.action === 'tip-bag' || entry?.action === 'tip-one-of-several';
  return (
    <ActPage viewer={viewer} at={at} title={say('line-undo')} startsAtBack>
      {entry === null ? (
        <p class="card refusal" role="alert">
          {trouble?.sentence}
        </p>
      ) : (
        <>
          <p class="sentence">
            {sayLocally('undo-entry', { what: say(`undo-${entry.action}`), at: entry.recordedAt }, viewer.timeZone)}
          </p>
          <p class="sentence">
            <strong>{say(isTip ? 'undo-did-sugar' : 'undo-did-happen')}</strong>
          </p>
          <EntryForm viewer={viewer} action={`/line/${at.line.id}/undo`} trouble={trouble}>
            <HiddenEntry name="sequence" value={String(entry.sequence)} />
            {ripple === null ? null : <HiddenEntry name="previewed" value={ripple.mark} />}
            <div class="acts">
              <Act says={say(isTip ? 'undo-yes-sugar' : 'undo-yes')} name="happened" value="yes" tone="plain" />
              <Act says={say('undo-no')} name="happened" value="no" tone="careful" />
            </div>
          </EntryForm>
          {ripple === null ? null : (
            <section aria-labelledby="undo-changes">
              <h2 id="undo-changes">{say('undo-would-change')}</h2>
              <RippleSummary ripple={ripple} />
              <RippleTables ripple={ripple} />
            </section>
          )}
        </>
      )}
    </ActPage>
  );
}
