import type { VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import { Key } from '../../platform/web/kit/act.js';

/** One step back. Nothing that was entered before is lost by it. */
export function BackTo({ href }: { readonly href: string }): VNode {
  return (
    <p>
      <a class="act plain" href={href} accessKey="b" data-back>
        {say('dispatch-back')}
        <Key of="b" />
      </a>
    </p>
  );
}
