import type { VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import { countText, roundKilogramsText } from '../../platform/web/figures-text.js';
import { clockText, sayLocally } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import type { HandoverPoints } from '../../reconciliation/handover-points.js';

interface PointsProps {
  readonly points: HandoverPoints;
  readonly viewer: Viewer;
}

/** The points of a handover, in one order: in the hopper, not finished, not allowed, does not add up yet, due next. */
export function SixPoints({ points, viewer }: PointsProps): VNode {
  return (
    <ol class="six-points">
      <Point head="handover-in-hopper" says={hopperSays(points)} />
      <Point head="handover-not-finished" says={notFinishedSays(points)} />
      <Point head="handover-not-allowed" says={points.notAllowed.map((hold) => say('handover-hold', { ...hold }))} />
      <Point head="handover-adds-up" says={balanceSays(points)} />
      <Point head="handover-due-next" says={dueSays(points, viewer.timeZone)} />
    </ol>
  );
}

function Point({ head, says }: { readonly head: string; readonly says: readonly string[] }): VNode {
  return (
    <li>
      <strong>{say(head)}</strong>
      {says.length === 0 ? (
        <p class="quiet">{say('handover-nothing')}</p>
      ) : (
        <ul>
          {says.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
    </li>
  );
}

function hopperSays({ hopper, running }: HandoverPoints): readonly string[] {
  const text = roundKilogramsText;
  const bags = hopper.layers.map(({ name, grams }) => `${name} ${text(grams)} kg`).join(', ');
  const facts = { hopper: hopper.code, kilograms: text(hopper.grams), lower: text(hopper.lowerGrams) };
  return [
    say('handover-hopper', { ...facts, upper: text(hopper.upperGrams), bags: bags === '' ? '–' : bags }),
    ...(hopper.olderCount > 0 ? [say('line-older-possible', { count: hopper.olderCount })] : []),
    running === null
      ? say('handover-no-run')
      : say('handover-running', { ...running, packCount: countText(running.packCount) }),
  ];
}

function notFinishedSays({ notFinished }: HandoverPoints): readonly string[] {
  const { hangingBags, openPacks, loosePacks, labelsNotBack, stoppedBecause, changeoverNext } = notFinished;
  return [
    ...hangingBags.map((bag) => say('handover-hangs', { bag })),
    ...(openPacks === null || openPacks === 0 ? [] : [say('handover-open-packs', { packCount: countText(openPacks) })]),
    ...(loosePacks === null ? [] : [say('handover-loose', { packCount: countText(loosePacks) })]),
    ...labelsNotBack.map((pallet) => say('handover-label-not-back', { pallet })),
    ...(stoppedBecause === null ? [] : [say('handover-stands', { reason: say(`stop-reason-${stoppedBecause}`) })]),
    ...(changeoverNext === null ? [] : [say('handover-changeover', { rung: say(`rung-${changeoverNext}`) })]),
  ];
}

function dueSays({ checks, due }: HandoverPoints, timeZone: string): readonly string[] {
  return [
    ...checks.map(({ kind, station, dueAt }) => {
      return say('handover-check', { kind, station, at: clockText(dueAt, timeZone) });
    }),
    ...due.map(({ cause, facts }) => sayLocally(cause, facts, timeZone)),
  ];
}

function balanceSays({ balance, hopper }: HandoverPoints): readonly string[] {
  const text = roundKilogramsText;
  const outs = [
    say('line-part-packed', { kilograms: text(balance.packedGrams) }),
    say('line-part-rejected', { kilograms: text(balance.rejectGrams) }),
    say('line-part-sampled', { kilograms: text(balance.sampleGrams) }),
    say('line-part-swept', { kilograms: text(balance.sweepingGrams) }),
  ];
  const { openingGrams, tippedGrams, insideGrams, doubtGrams } = balance;
  const facts = { opening: text(openingGrams), tipped: text(tippedGrams), inside: text(insideGrams) };
  return [
    say('line-sentence', { ...facts, outs: outs.join(' + '), hopper: hopper.code }),
    ...(doubtGrams === 0
      ? []
      : [say(doubtGrams < 0 ? 'line-records-short' : 'line-records-over', { kilograms: text(Math.abs(doubtGrams)) })]),
  ];
}
