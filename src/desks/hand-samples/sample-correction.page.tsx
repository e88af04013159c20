import type { VNode } from 'preact';
import type { SampleOfRun } from '../../fill-weight/hand-samples.js';
import { gramsText } from '../../fill-weight/weight-text.js';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { ChoiceEntry, NumberEntry } from '../../platform/web/kit/entries.js';
import { sayLocally } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { CorrectionPage } from '../corrections/correction.page.js';

interface SampleCorrectionProps {
  readonly viewer: Viewer;
  readonly sample: SampleOfRun;
  readonly scales: readonly { readonly id: string; readonly name: string }[];
  readonly trouble: FormTrouble | null;
}

/** A sample that was recorded wrongly, or never weighed. */
export function sampleCorrectionPage({ viewer, sample, scales, trouble }: SampleCorrectionProps): VNode {
  const { id, run, weighedAt, netDecigrams, scaleCode, reading } = sample;
  const facts = { run: run.number, at: weighedAt, grams: gramsText(reading.meanMilligrams, 2), scale: scaleCode };
  return (
    <CorrectionPage
      viewer={viewer}
      title={say('hand-sample-correct-title', { run: run.number })}
      says={sayLocally('hand-sample-correct-is', facts, viewer.timeZone)}
      action={`/hand-samples/${id}/correct`}
      trouble={trouble}
    >
      {netDecigrams.map((net, place) => (
        <NumberEntry
          key={place}
          name={`net${place}`}
          label={say('hand-sample-correct-pack', { number: place + 1, grams: gramsText(net * 100) })}
          hint={say('correction-as-it-was')}
          unit="g"
          trouble={trouble}
        />
      ))}
      <ChoiceEntry
        name="scaleId"
        label={say('hand-sample-scale')}
        hint={say('correction-as-it-was')}
        choices={scales.map((scale) => ({ value: scale.id, says: scale.name }))}
        trouble={trouble}
      />
    </CorrectionPage>
  );
}
