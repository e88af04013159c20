import type { ComponentChildren, VNode } from 'preact';

interface LiveProps {
  readonly id: string;
  /** The journal's actions that change what is shown here. */
  readonly about: readonly string[];
  readonly class?: string | undefined;
  readonly children: ComponentChildren;
}

/** A part of a page that follows the journal while the page is open. Without script it is as new as the page. */
export function Live({ id, about, children, ...rest }: LiveProps): VNode {
  return (
    <div id={id} class={rest.class} data-live={about.join(' ')}>
      {children}
    </div>
  );
}
