import type { VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import { cardMillimetres, sizeSteps } from './true-size.js';

/** A bank card is held against the screen until the drawn one is as wide: then a millimetre here is a millimetre. */
export function sizePage({ viewer, tenths }: { readonly viewer: Viewer; readonly tenths: number }): VNode {
  const width = tenths / 10;
  const height = (width * 53.98) / cardMillimetres;
  return (
    <Shell title={say('size-title')} viewer={viewer} use="tablet">
      <p class="sentence">{say('size-says')}</p>
      <div class="table-wrap" tabIndex={0} role="region" aria-label={say('size-card')}>
        <svg
          class="bank-card"
          width={width}
          height={height}
          viewBox={`0 0 ${width} ${height}`}
          role="img"
          aria-label={say('size-card')}
        >
          <rect x="1" y="1" width={width - 2} height={height - 2} rx="12" />
        </svg>
      </div>
      <form class="card-steps" method="post" action="/device/size">
        <input type="hidden" name="csrf" value={viewer.csrfToken} />
        {sizeSteps.map((step) => (
          <button key={step} type="submit" class="act plain" name="step" value={String(step)}>
            {say(step < 0 ? 'size-narrower' : 'size-wider', { step: Math.abs(step) })}
          </button>
        ))}
      </form>
      <p>
        <a href="/device">{say('device-back')}</a>
      </p>
    </Shell>
  );
}
