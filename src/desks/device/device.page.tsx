import type { VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import { ActLink } from '../../platform/web/kit/act.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';

/** This device: what waits on it, how large its screen is, what its scanner does. */
export function devicePage({ viewer }: { readonly viewer: Viewer }): VNode {
  const { deviceCode } = viewer;
  return (
    <Shell title={say('device-title')} viewer={viewer} use="tablet">
      <p class="sentence">
        {deviceCode === null ? say('device-not-enrolled-here') : say('device-is', { code: deviceCode })}
      </p>
      <p class="acts">
        <ActLink href="/device/queue" says={say('device-queue')} />
        <ActLink href="/device/size" says={say('device-size')} />
        <ActLink href="/device/scanner" says={say('device-scanner')} />
      </p>
    </Shell>
  );
}
