import type { VNode } from 'preact';
import { mayDo } from '../../platform/actor.js';
import { say } from '../../platform/sentences/sentences.js';
import { ActLink } from '../../platform/web/kit/act.js';
import { sayLocally } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { inForceText } from '../line-settings/setting-texts.js';
import { gramsText } from '../weight-text.js';
import type { AdviceOnFormat } from './advise-fill.js';
import { leastLots } from './fill-lot.js';

interface SettingProps {
  readonly viewer: Viewer;
  readonly lineId: string;
  readonly of: AdviceOnFormat;
}

/** What the line is set to for a format, beside what is advised; taken over by recording it. */
export function SettingOfFormat({ viewer, lineId, of }: SettingProps): VNode {
  const { fill, advised } = of;
  const path = `/lines/${lineId}/settings?formatId=${fill.formatId}`;
  const figure = advised === null ? null : (advised.fillerSetpointMilligrams ?? advised.advice.setpointMilligrams);
  return (
    <>
      <p class="sentence">{settingText(viewer, of)}</p>
      {advised === null ? null : <p>{comparedText(of)}</p>}
      {mayDo(viewer.actor.roles, 'run-line') ? (
        <div class="acts">
          {figure === null ? null : (
            <ActLink
              href={`${path}&setpointGrams=${figure / 1000}`}
              says={say('line-fill-take-over', { grams: gramsText(figure, 2) })}
              tone="asked"
            />
          )}
          <ActLink href={path} says={say('line-fill-set-otherwise')} />
        </div>
      ) : null}
    </>
  );
}

function settingText(viewer: Viewer, { fill: { setting } }: AdviceOnFormat): string {
  const { setpoint } = setting;
  const what = inForceText(setting);
  if (what === null) return say('line-fill-no-setting');
  if (setpoint === null) return say('line-fill-no-setpoint', { what });
  const facts = { what, at: setpoint.changedAt, why: setpoint.why };
  return sayLocally('line-fill-setting', facts, viewer.timeZone);
}

/** The advised mean as a figure on the filler, where lots tell how far the two lie apart. */
function comparedText({ known, advised }: AdviceOnFormat): string {
  const { offset, knownLotCount } = known;
  const mean = gramsText(advised?.advice.setpointMilligrams ?? 0, 2);
  if (offset === null) return say('line-fill-offset-unknown', { mean, least: leastLots, known: knownLotCount });
  return say(offset.meanMilligrams < 0 ? 'line-fill-offset-below' : 'line-fill-offset-above', {
    ...{ mean, lots: offset.lotCount, figure: gramsText(advised?.fillerSetpointMilligrams ?? 0, 2) },
    offset: gramsText(Math.abs(offset.meanMilligrams), 2),
    least: gramsText(offset.leastMilligrams, 2),
    most: gramsText(offset.mostMilligrams, 2),
  });
}
