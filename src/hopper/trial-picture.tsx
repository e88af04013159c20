import type { VNode } from 'preact';
import { meanShareLeft } from '../core/hopper-flow/residence-time.js';
import { say } from '../platform/sentences/sentences.js';
import { kilograms } from './flow-text.js';
import type { FittedTrial, SampleRow } from './tracer-trials.js';

const [width, height, left, top] = [640, 260, 50, 12];

/** The share of the second bag in what left: as colour tells it, and by the curve that was fitted. */
export function shareAt(
  { trial, fit }: FittedTrial,
  sample: Pick<SampleRow, 'fromGrams' | 'toGrams' | 'colourIu'>,
): { readonly measured: number; readonly fitted: number | null } {
  const [before, after] = [Number(trial.beforeColourIu), Number(trial.afterColourIu)];
  const measured = after === before ? 0 : (Number(sample.colourIu) - before) / (after - before);
  if (!fit.ok) return { measured, fitted: null };
  const shape = {
    zoneCount: fit.zoneCount.value,
    holdUpGrams: fit.holdUpGrams.value,
    plugGrams: fit.plugGrams?.value ?? 0,
  };
  return { measured, fitted: meanShareLeft(shape, sample) };
}

/** The samples of a trial over kilograms, with the curve that was fitted to them. The table below has the same numbers. */
export function TrialPicture({ found }: { readonly found: FittedTrial }): VNode | null {
  const { samples, fit } = found;
  const lastGrams = samples.at(-1)?.toGrams ?? 0;
  if (lastGrams === 0) return null;
  const x = (grams: number): number => left + (grams / lastGrams) * (width - left - 12);
  const y = (share: number): number => top + (1 - Math.min(1.05, Math.max(-0.05, share))) * (height - top - 40);
  const curve = Array.from({ length: 81 }, (_, place) => {
    const grams = (lastGrams * place) / 80;
    const { fitted } = shareAt(found, { fromGrams: grams, toGrams: grams, colourIu: '0' });
    return `${x(grams).toFixed(1)},${y(fitted ?? 0).toFixed(1)}`;
  });
  return (
    <svg class="picture curve" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={say('trial-picture-says')}>
      {[0, 0.5, 1].map((share) => (
        <g key={share}>
          <path class="line" d={`M${left} ${y(share)} H${width - 12}`} />
          <text x={8} y={y(share) + 4}>{`${share * 100} %`}</text>
        </g>
      ))}
      {fit.ok ? <polyline class="strong" fill="none" points={curve.join(' ')} /> : null}
      {samples.map((sample, place) => {
        const at = (sample.fromGrams + sample.toGrams) / 2;
        return <circle key={place} class="open" cx={x(at)} cy={y(shareAt(found, sample).measured)} r={4.5} />;
      })}
      <text x={left} y={height - 8}>
        0 kg
      </text>
      <text x={width - 12} y={height - 8} text-anchor="end">
        {kilograms(lastGrams)}
      </text>
    </svg>
  );
}
