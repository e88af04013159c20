import type { VNode } from 'preact';
import type { MeasuredSymbol } from '../../platform/printing/symbols.js';
import { say } from '../../platform/sentences/sentences.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';

/** Everything that own labels hold, and a separator: a scanner that sends this as printed sends them all. */
export const scannerReference = 'PT0123456789-ABCDEFGHIJKLMNOPQRSTUVWXYZ';

interface ScannerProps {
  readonly viewer: Viewer;
  readonly symbol: MeasuredSymbol;
}

/** The self-test of a scanner: one code that is known is scanned, and the page says what came. */
export function scannerPage({ viewer, symbol }: ScannerProps): VNode {
  return (
    <Shell title={say('scanner-title')} viewer={viewer} use="tablet">
      <p class="sentence">{say('scanner-says')}</p>
      <div id="scanner-test">
        <div role="status" class="card">
          <p class="quiet">{say('scanner-waits')}</p>
        </div>
      </div>
      <article class="sheet">
        <svg
          class="reference"
          width={`${symbol.widthMm}mm`}
          height={`${symbol.heightMm}mm`}
          viewBox={`0 0 ${symbol.widthMm} ${symbol.heightMm}`}
          role="img"
          aria-label={say('scanner-code')}
        >
          <rect class="paper" x="0" y="0" width={symbol.widthMm} height={symbol.heightMm} />
          {symbol.darks.map(({ xMm, yMm, widthMm, heightMm }) => (
            <rect key={`${xMm} ${yMm}`} x={xMm} y={yMm} width={widthMm} height={heightMm} />
          ))}
        </svg>
        <p class="code">{scannerReference}</p>
      </article>
      <p>
        <a href="/device">{say('device-back')}</a>
      </p>
    </Shell>
  );
}
