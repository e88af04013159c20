import type { ComponentChildren, VNode } from 'preact';
import { roundKilogramsText } from '../figures-text.js';

/** A part of what went in: what became of it. */
export interface BalancePart {
  readonly label: string;
  readonly grams: number;
  /** Still there and not counted out: drawn as an outline. */
  readonly isOpen?: boolean | undefined;
}

interface BalanceProps {
  /** The sentence that must balance; it holds the numbers that the bar shows. */
  readonly sentence: ComponentChildren;
  readonly inLabel: string;
  readonly inGrams: number;
  readonly parts: readonly BalancePart[];
  /** What is left over (or too much, below zero) after all parts; null while nobody can tell. */
  readonly gap?: { readonly label: string; readonly grams: number } | null | undefined;
}

const width = 1000;
const barHeight = 26;

/** A sentence of kilograms that must balance, and under it the same as two bars to one scale. */
export function Balance({ sentence, inLabel, inGrams, parts, gap }: BalanceProps): VNode {
  const left = gap ?? null;
  const outGrams = parts.reduce((sum, part) => sum + Math.max(0, part.grams), 0);
  const mostGrams = Math.max(inGrams, outGrams + Math.max(0, left?.grams ?? 0), 1);
  const wide = (grams: number): number => (Math.max(0, grams) / mostGrams) * width;
  return (
    <div class="balance">
      <p class="sentence">{sentence}</p>
      <svg
        class="picture"
        viewBox={`0 0 ${width} 84`}
        role="img"
        aria-label={inWords({ inLabel, inGrams, parts, left })}
      >
        <rect class="part" x="0" y="2" width={wide(inGrams)} height={barHeight} />
        <text class="on-dark" x="8" y="20">
          {wide(inGrams) > 150 ? `${inLabel} ${roundKilogramsText(inGrams)} kg` : ''}
        </text>
        {placed(parts, wide).map(({ part, at, place }) => (
          <g key={part.label}>
            <rect
              class={part.isOpen === true ? 'open' : `part part-${place % 4}`}
              x={at}
              y="32"
              width={wide(part.grams)}
              height={barHeight}
            />
            <text x={Math.min(at + 2, width - 60)} y={place % 2 === 0 ? 72 : 83}>
              {wide(part.grams) > 9 * part.label.length ? part.label : ''}
            </text>
          </g>
        ))}
        {left === null || left.grams <= 0 ? null : (
          <rect class="gap" x={wide(outGrams)} y="32" width={Math.max(3, wide(left.grams))} height={barHeight} />
        )}
        <path class="strong" d={`M${wide(inGrams)} 0 V62`} />
      </svg>
    </div>
  );
}

function placed(
  parts: readonly BalancePart[],
  wide: (grams: number) => number,
): readonly { part: BalancePart; at: number; place: number }[] {
  let at = 0;
  return parts.map((part, place) => {
    const here = { part, at, place };
    at += wide(part.grams);
    return here;
  });
}

interface Said {
  readonly inLabel: string;
  readonly inGrams: number;
  readonly parts: readonly BalancePart[];
  readonly left: { readonly label: string; readonly grams: number } | null;
}

function inWords({ inLabel, inGrams, parts, left }: Said): string {
  const all = [{ label: inLabel, grams: inGrams }, ...parts, ...(left === null ? [] : [left])];
  return all.map(({ label, grams }) => `${label} ${roundKilogramsText(grams)} kg`).join('; ');
}
