import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
import type { FormTrouble } from '../platform/web/form-trouble.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';

/** A banner that could not be put aside: why, and the way to the list. */
export function shelfTroublePage({ viewer, trouble }: { viewer: Viewer; trouble: FormTrouble }): VNode {
  return (
    <Shell title={say('points-title')} viewer={viewer}>
      <section class="card refusal" role="alert">
        <p>{trouble.sentence}</p>
        <p>
          <a href="/open-points">{say('points-title')}</a>
        </p>
      </section>
    </Shell>
  );
}
