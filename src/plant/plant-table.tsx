import type { ComponentChildren, VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';

interface TableProps {
  readonly title: string;
  readonly heads: readonly string[];
  readonly children: readonly VNode[];
}

/** A table of one kind of thing in a region that scrolls; a sentence where there is none. `heads` are sentence codes. */
export function Table({ title, heads, children }: TableProps): VNode {
  if (children.length === 0) return <p class="quiet">{say('plant-nothing-of', { title })}</p>;
  return (
    <div class="table-wrap" tabIndex={0} role="region" aria-label={title}>
      <table>
        <caption>{title}</caption>
        <thead>
          <tr>
            {heads.map((head) => (
              <th key={head} scope="col">
                {say(head)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>{children}</tbody>
      </table>
    </div>
  );
}

/** A row whose first cell names it. */
export function Row({ cells }: { readonly cells: readonly ComponentChildren[] }): VNode {
  const [first, ...rest] = cells;
  return (
    <tr>
      <th scope="row">{first}</th>
      {rest.map((cell, place) => (
        <td key={place}>{cell}</td>
      ))}
    </tr>
  );
}
