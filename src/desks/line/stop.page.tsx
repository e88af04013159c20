import type { VNode } from 'preact';
import { stopReasons } from '../../packing/line-stop.form.js';
import type { StopRow } from '../../packing/packing-run-rows.js';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act } from '../../platform/web/kit/act.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { sayLocally } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { ActPage } from './act.page.js';
import type { LineNow } from './line-rows.js';

interface StopProps {
  readonly viewer: Viewer;
  readonly at: LineNow;
  readonly stop: StopRow;
  readonly trouble: FormTrouble | null;
}

/** A stop: it runs again with one touch; why it stood is said with one touch, now or later. */
export function stopPage({ viewer, at, stop, trouble }: StopProps): VNode {
  const action = `/line/${at.line.id}/stops/${stop.id}`;
  const facts = { line: at.line.name, at: stop.stoppedAt, until: stop.startedAgainAt };
  const isOver = stop.startedAgainAt !== null;
  return (
    <ActPage viewer={viewer} at={at} title={say('stop-title', { line: at.line.name })} startsAtBack>
      <p class="sentence">{sayLocally(isOver ? 'stop-page-stood' : 'stop-page-stands', facts, viewer.timeZone)}</p>
      {isOver ? null : (
        <EntryForm viewer={viewer} action={`${action}/again`} trouble={trouble} queue="stop">
          <Act says={say('line-runs-again')} command="runs-again" />
        </EntryForm>
      )}
      <h2>
        {stop.reason === 'not-said'
          ? say('stop-why')
          : say('stop-why-was', { reason: say(`stop-reason-${stop.reason}`) })}
      </h2>
      <EntryForm viewer={viewer} action={`${action}/reason`} trouble={isOver ? trouble : null} id="stop-reason">
        <div class="acts">
          {stopReasons
            .filter((reason) => reason !== 'not-said' && reason !== stop.reason)
            .map((reason) => (
              <Act key={reason} says={say(`stop-reason-${reason}`)} name="stopReason" value={reason} tone="plain" />
            ))}
        </div>
      </EntryForm>
    </ActPage>
  );
}
