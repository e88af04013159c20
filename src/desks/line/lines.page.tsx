import type { VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';

interface LinesProps {
  readonly viewer: Viewer;
  readonly lines: readonly {
    readonly id: string;
    readonly code: string;
    readonly name: string;
    readonly format: string | null;
  }[];
}

/** Which line is it? */
export function linesPage({ viewer, lines }: LinesProps): VNode {
  return (
    <Shell title={say('lines-title')} viewer={viewer} use="tablet">
      {lines.length === 0 ? <p class="sentence">{say('lines-none')}</p> : null}
      <div class="acts">
        {lines.map((line) => (
          <a key={line.id} class="act plain" href={`/line/${line.id}`}>
            {line.name} · {line.format ?? say('line-no-run')}
          </a>
        ))}
      </div>
    </Shell>
  );
}
