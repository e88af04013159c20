import type { VNode } from 'preact';
import { roundKilogramsText } from '../figures-text.js';

/** What of a bag lies in the hopper, the lowest first. */
export interface HopperLayer {
  /** The bag's last digits. */
  readonly label: string;
  readonly grams: number;
  /** It may still be there, though it is not expected. */
  readonly isGhost?: boolean | undefined;
}

interface HopperColumnProps {
  /** Said to who cannot see it: hopper, content, limits. */
  readonly says: string;
  readonly capacityGrams: number;
  readonly expectedGrams: number;
  /** Between what it may be, by the scales. */
  readonly leastGrams: number;
  readonly mostGrams: number;
  readonly layers: readonly HopperLayer[];
}

const height = 300;
const left = 20;
const broad = 110;

/** The hopper as a column to scale: layers in the order in which they come out, the lowest next. */
export function HopperColumn({ says, capacityGrams, ...content }: HopperColumnProps): VNode {
  const { expectedGrams, leastGrams, mostGrams, layers } = content;
  const topGrams = Math.max(capacityGrams, mostGrams, 1);
  const high = (grams: number): number => (Math.min(Math.max(0, grams), topGrams) / topGrams) * height;
  return (
    <svg class="picture column" viewBox={`0 0 260 ${height + 34}`} role="img" aria-label={says}>
      <path class="strong" fill="none" d={`M${left} 6 V${height + 10} H${left + broad} V6`} />
      {stacked(layers.filter(({ isGhost }) => isGhost !== true)).map(({ layer, under }, place) => (
        <g key={layer.label}>
          <rect
            class={`part part-${2 + (place % 2)}`}
            x={left + 2}
            y={height + 9 - high(under + layer.grams)}
            width={broad - 4}
            height={Math.max(1, high(layer.grams))}
          />
          <text x={left + broad + 10} y={height + 9 - high(under + layer.grams / 2) + 5}>
            {`${layer.label} · ${roundKilogramsText(layer.grams)} kg`}
          </text>
        </g>
      ))}
      <rect
        class="ghost"
        x={left - 8}
        y={height + 9 - high(mostGrams)}
        width={broad + 16}
        height={Math.max(2, high(mostGrams) - high(leastGrams))}
      />
      <path class="strong" d={`M${left - 12} ${height + 9 - high(expectedGrams)} h${broad + 24}`} />
      <text x={left} y={height + 30}>
        {layers
          .filter(({ isGhost }) => isGhost === true)
          .map(({ label }) => `(${label} ?)`)
          .slice(0, 4)
          .join(' ')}
      </text>
    </svg>
  );
}

function stacked(layers: readonly HopperLayer[]): readonly { layer: HopperLayer; under: number }[] {
  let under = 0;
  return layers.map((layer) => {
    const here = { layer, under };
    under += layer.grams;
    return here;
  });
}
