import type { ComponentChildren, VNode } from 'preact';
import { say } from '../../sentences/sentences.js';
import { localText } from '../local-text.js';
import type { Viewer } from '../request.js';

interface PrintSheetProps {
  readonly viewer: Viewer;
  readonly title: string;
  /** The instant as at which it is true. */
  readonly asAt: string;
  readonly children: ComponentChildren;
}

/** A page of paper: what is inside is printed with its title, the plant and the time; the rest of the screen is not. */
export function PrintSheet({ viewer, title, asAt, children }: PrintSheetProps): VNode {
  return (
    <article class="sheet">
      <header>
        <p>{viewer.siteName}</p>
        <h2>{title}</h2>
        <p>{say('sheet-as-at', { at: localText(asAt, viewer.timeZone) })}</p>
      </header>
      {children}
    </article>
  );
}
