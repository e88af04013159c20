import type { VNode } from 'preact';
import { say } from '../sentences/sentences.js';

export type MarkedState = 'waiting' | 'released' | 'on-hold' | 'rejected' | 'concession' | 'doubtful';

/** A state as a shape and a word; colour only where someone must act. Print keeps shape and word. */
export function StateMark({ state }: { state: MarkedState }): VNode {
  return (
    <span class={`state state-${state}`}>
      <svg viewBox="0 0 24 24" width="24" height="24" aria-hidden="true" focusable="false">
        {shapes[state]}
      </svg>
      <span>{say(`state-${state}`)}</span>
    </span>
  );
}

const box = <rect x="3" y="3" width="18" height="18" class="outline" />;
const fullBox = <rect x="2" y="2" width="20" height="20" class="solid" />;

/** Drawn by ourselves: boxes, so that nothing looks like a sign for people's safety. */
const shapes: Readonly<Record<MarkedState, VNode>> = {
  waiting: <rect x="3" y="3" width="18" height="18" class="outline dashed" />,
  released: (
    <g>
      {box}
      <path d="M7 12.5 L10.5 16 L17 8.5" class="stroke" />
    </g>
  ),
  'on-hold': (
    <g>
      {fullBox}
      <path d="M9 7 V17 M15 7 V17" class="cut" />
    </g>
  ),
  rejected: (
    <g>
      {fullBox}
      <path d="M7.5 7.5 L16.5 16.5 M16.5 7.5 L7.5 16.5" class="cut" />
    </g>
  ),
  concession: (
    <g>
      {box}
      <path d="M3 3 H12 V21 H3 Z" class="half" />
      <text x="16.5" y="16" class="letter">
        C
      </text>
    </g>
  ),
  doubtful: (
    <g>
      {box}
      <text x="12" y="17" class="letter">
        ?
      </text>
    </g>
  ),
};
