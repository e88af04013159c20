import type { VNode } from 'preact';
import type { ReadSample } from '../../fill-weight/hand-samples.js';
import type { RunRow } from '../../packing/packing-run-rows.js';
import { say } from '../../platform/sentences/sentences.js';
import { ActLink } from '../../platform/web/kit/act.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import { limitsText } from './hand-sample.page.js';
import { SampleTable } from './sample-table.js';

interface SamplesOfRunProps {
  readonly viewer: Viewer;
  readonly run: RunRow;
  readonly samples: readonly ReadSample[];
}

/** The hand samples of a run, open or closed. */
export function samplesOfRunPage({ viewer, run, samples }: SamplesOfRunProps): VNode {
  return (
    <Shell title={say('hand-samples-of-run', { run: run.number })} viewer={viewer}>
      <p class="sentence">{limitsText(run)}</p>
      <SampleTable
        caption={say('hand-samples-caption')}
        samples={samples}
        nominalGrams={run.nominalGrams}
        timeZone={viewer.timeZone}
      />
      <div class="acts">
        <ActLink href={`/runs/${run.id}/weights`} says={say('hand-samples-to-weights')} />
      </div>
    </Shell>
  );
}
