import type { VNode } from 'preact';
import { HoldLink } from '../../disposition/hold-link.js';
import { shortLimits, shortStateOf } from '../../core/average-quantity/short-state.js';
import type { SampleOfRun } from '../../fill-weight/hand-samples.js';
import { yardstickFor } from '../../fill-weight/kept/yardsticks.js';
import { gramsText } from '../../fill-weight/weight-text.js';
import { mayDo } from '../../platform/actor.js';
import { say } from '../../platform/sentences/sentences.js';
import { ActLink } from '../../platform/web/kit/act.js';
import { Figures } from '../../platform/web/kit/figures.js';
import { Table } from '../../platform/web/kit/table.js';
import { sayLocally } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import { limitsText } from './hand-sample.page.js';
import { whatToDo } from './sample-texts.js';

interface SampleResultProps {
  readonly viewer: Viewer;
  readonly sample: SampleOfRun;
}

/** A hand sample: what to do in one line, then its figures and its packs. */
export function sampleResultPage({ viewer, sample }: SampleResultProps): VNode {
  const { id, run, reading, isVoid, weighedAt, scaleCode } = sample;
  const nominalMilligrams = run.nominalGrams * 1000;
  const facts = { run: run.number, at: weighedAt, scale: scaleCode };
  return (
    <Shell title={say('hand-sample-result-title', { run: run.number })} viewer={viewer} use="tablet">
      <p class={isVoid || reading.finding === 'inOrder' ? 'sentence' : 'sentence card refusal'}>
        {isVoid ? say('hand-sample-is-void') : whatToDo(reading, nominalMilligrams)}
      </p>
      <Figures
        of={[
          { label: say('hand-sample-mean'), value: gramsText(reading.meanMilligrams, 2) },
          { label: say('hand-sample-off'), value: gramsText(reading.meanMilligrams - nominalMilligrams, 2) },
          { label: say('hand-sample-range'), value: gramsText(reading.rangeMilligrams) },
          { label: say('hand-sample-deviation'), value: gramsText(reading.standardDeviationMilligrams, 2) },
          { label: say('hand-sample-lightest'), value: gramsText(reading.smallestMilligrams) },
        ]}
      />
      <p>
        {sayLocally('hand-sample-weighed', facts, viewer.timeZone)} {limitsText(run)}
      </p>
      <div class="acts">
        <ActLink href={`/line/${run.lineId}`} says={say('line-back', { line: run.lineName })} tone="asked" />
        {mayDo(viewer.actor.roles, 'weigh-packs') && run.closedAt === null ? (
          <ActLink href={`/line/${run.lineId}/hand-samples`} says={say('hand-sample-another')} />
        ) : null}
        <ActLink href={`/runs/${run.id}/hand-samples`} says={say('hand-samples-of-run', { run: run.number })} />
        {mayDo(viewer.actor.roles, 'correct') && !isVoid ? (
          <ActLink href={`/hand-samples/${id}/correct`} says={say('hand-sample-correct')} />
        ) : null}
        <HoldLink viewer={viewer} kind="packing-run" id={run.id} />
      </div>
      <Packs sample={sample} />
      <p class="caution">
        {say('hand-sample-no-test')} {say('fill-law-caution')}
      </p>
    </Shell>
  );
}

function Packs({ sample }: { readonly sample: SampleOfRun }): VNode {
  const { netDecigrams, run } = sample;
  const nominalMilligrams = run.nominalGrams * 1000;
  const hasLimits = yardstickFor(nominalMilligrams).t1Milligrams !== null;
  const limits = hasLimits ? shortLimits(nominalMilligrams, 'directive') : [];
  return (
    <Table
      caption={say('hand-sample-packs')}
      columns={[
        { head: say('hand-sample-pack-head'), align: 'number' },
        { head: say('hand-sample-net'), align: 'number' },
        { head: say('hand-sample-off'), align: 'number' },
        { head: say('hand-sample-finding') },
      ]}
      rows={netDecigrams.map((net, place) => {
        const state = shortStateOf(net * 100, limits);
        return {
          key: String(place),
          isLoud: state !== null,
          cells: [
            String(place + 1),
            gramsText(net * 100),
            gramsText(net * 100 - nominalMilligrams),
            state === null ? '' : say(`hand-sample-pack-is-${state}`),
          ],
        };
      })}
    />
  );
}
