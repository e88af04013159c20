import type { ComponentChildren, VNode } from 'preact';

export interface Figure {
  readonly label: string;
  readonly value: ComponentChildren;
  readonly unit?: string | undefined;
}

/** The few numbers that a page is about, each with its name and unit. */
export function Figures({ of }: { readonly of: readonly Figure[] }): VNode {
  return (
    <dl class="figures">
      {of.map(({ label, value, unit }) => (
        <div key={label}>
          <dt>{label}</dt>
          <dd>
            {value}
            {unit === undefined ? null : <span class="unit"> {unit}</span>}
          </dd>
        </div>
      ))}
    </dl>
  );
}
