import type { VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';

const columns = [
  'entry-column-time',
  'entry-column-what',
  'entry-column-person',
  'entry-column-state',
  'entry-column-said',
  'entry-column-acts',
] as const;

/** What was entered on this device, everybody's, and where each entry is. The device itself fills the list in. */
export function queuePage({ viewer }: { readonly viewer: Viewer }): VNode {
  return (
    <Shell title={say('queue-title')} viewer={viewer} use="tablet">
      <p class="sentence">{say('queue-says')}</p>
      <p id="no-entries">{say('queue-none')}</p>
      <div class="table-wrap" tabIndex={0} role="region" aria-label={say('queue-title')}>
        <table id="entries" hidden>
          <caption class="unseen">{say('queue-title')}</caption>
          <thead>
            <tr>
              {columns.map((code) => (
                <th key={code} scope="col">
                  {say(code)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody aria-live="polite" />
        </table>
      </div>
      <p class="acts">
        <button type="button" id="send-now" class="act plain">
          {say('queue-send-now')}
        </button>
        <a class="act plain" href="/device">
          {say('device-back')}
        </a>
      </p>
    </Shell>
  );
}
