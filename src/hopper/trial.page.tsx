import type { VNode } from 'preact';
import { mayDo } from '../platform/actor.js';
import { say } from '../platform/sentences/sentences.js';
import type { FormTrouble } from '../platform/web/form-trouble.js';
import { ActLink } from '../platform/web/kit/act.js';
import { Figures } from '../platform/web/kit/figures.js';
import { Table } from '../platform/web/kit/table.js';
import { localText } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import { fitText, kilograms } from './flow-text.js';
import { mass } from './level-text.js';
import type { FittedTrial } from './tracer-trials.js';
import { shareAt, TrialPicture } from './trial-picture.js';
import { WithdrawBox } from './withdraw-box.js';

interface TrialProps {
  readonly viewer: Viewer;
  readonly hopperCode: string;
  readonly found: FittedTrial;
  readonly by: string;
  readonly trouble: FormTrouble | null;
}

/** A tracer trial: what was taken, what it says of the hopper and how surely. */
export function trialPage({ viewer, hopperCode, found, by, trouble }: TrialProps): VNode {
  const { trial, fit } = found;
  const mayKeep = mayDo(viewer.actor.roles, 'keep-flow-models');
  return (
    <Shell title={say('trial-title', { hopper: hopperCode, number: trial.number })} viewer={viewer} use="desk">
      <p class="sentence">{fitText(fit)}</p>
      <p>
        {say('trial-made-by', {
          at: localText(trial.madeAt, viewer.timeZone),
          by,
          before: trial.beforeBagNumber,
          after: trial.afterBagNumber,
        })}
      </p>
      {trial.note === null ? null : <p>{trial.note}</p>}
      <FitFigures found={found} />
      <TrialPicture found={found} />
      <Samples found={found} />
      <div class="acts">
        <ActLink href={`/hoppers/${trial.hopperId}/flow`} says={say('flow-title', { hopper: hopperCode })} />
        <ActLink href={`/thread?code=${trial.beforeBagId}`} says={trial.beforeBagNumber} />
        <ActLink href={`/thread?code=${trial.afterBagId}`} says={trial.afterBagNumber} />
      </div>
      {mayKeep ? (
        <WithdrawBox
          viewer={viewer}
          action={`/tracer-trials/${trial.id}/withdrawal`}
          says={say('trial-withdraw')}
          trouble={trouble}
        />
      ) : null}
    </Shell>
  );
}

function FitFigures({ found }: { readonly found: FittedTrial }): VNode | null {
  const { fit, trial } = found;
  if (!fit.ok) return null;
  const withDoubt = ({ value, standard }: { value: number; standard: number }, text: (one: number) => string): string =>
    say('trial-estimate', { value: text(value), standard: text(standard) });
  const still = trial.insideGrams === null ? null : trial.insideGrams - fit.movingGrams.value;
  return (
    <>
      <Figures
        of={[
          { label: say('trial-hold-up'), value: withDoubt(fit.holdUpGrams, kilograms) },
          { label: say('trial-zones'), value: withDoubt(fit.zoneCount, (one) => one.toFixed(2)) },
          { label: say('trial-plug'), value: fit.plugGrams === null ? '–' : withDoubt(fit.plugGrams, kilograms) },
          { label: say('trial-moving'), value: withDoubt(fit.movingGrams, kilograms) },
          { label: say('trial-chi'), value: `${fit.chiSquare.toFixed(1)} / ${fit.degreesOfFreedom}` },
        ]}
      />
      <p class="quiet">{say('trial-doubt-says')}</p>
      {still === null ? null : (
        <p>
          {say(still > 2 * fit.movingGrams.standard ? 'trial-stands-still' : 'trial-all-moves', {
            inside: mass(trial.insideGrams ?? 0),
            still: kilograms(Math.max(0, still)),
          })}
        </p>
      )}
    </>
  );
}

function Samples({ found }: { readonly found: FittedTrial }): VNode {
  const { trial, samples } = found;
  return (
    <Table
      caption={say('trial-samples-caption', {
        count: samples.length,
        before: trial.beforeColourIu,
        after: trial.afterColourIu,
        standard: trial.standardIu,
      })}
      columns={[
        { head: say('trial-at'), align: 'number' },
        { head: say('trial-colour'), align: 'number' },
        { head: say('trial-share'), align: 'number' },
        { head: say('trial-share-fit'), align: 'number' },
      ]}
      rows={samples.map((sample, place) => {
        const { measured, fitted } = shareAt(found, sample);
        return {
          key: String(place),
          cells: [
            trial.packGrams === null
              ? mass(sample.fromGrams)
              : say('trial-pack', { number: sample.toGrams / trial.packGrams, at: mass(sample.toGrams) }),
            sample.colourIu,
            (measured * 100).toFixed(1),
            fitted === null ? '–' : (fitted * 100).toFixed(1),
          ],
        };
      })}
    />
  );
}
