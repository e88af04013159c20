import type { ComponentChildren, VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import type { LineNow } from './line-rows.js';

interface ActPageProps {
  readonly viewer: Viewer;
  readonly at: LineNow;
  readonly title: string;
  /** The page begins with buttons or choices: the way back has the focus, where a scanner's Enter enters nothing. */
  readonly startsAtBack?: boolean | undefined;
  readonly children: ComponentChildren;
}

/** The page of one act at a line: one column, one thing to do, one way back. */
export function ActPage({ viewer, at, title, startsAtBack, children }: ActPageProps): VNode {
  return (
    <Shell title={title} viewer={viewer} use="tablet">
      <p class="back">
        <a class="act plain" href={`/line/${at.line.id}`} autofocus={startsAtBack} data-back>
          {say('line-back', { line: at.line.name })}
        </a>
      </p>
      {children}
    </Shell>
  );
}
