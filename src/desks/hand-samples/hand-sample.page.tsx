import type { VNode } from 'preact';
import type { DueHandSample } from '../../fill-weight/hand-plan/due-hand-sample.js';
import type { ReadSample } from '../../fill-weight/hand-samples.js';
import { yardstickFor } from '../../fill-weight/kept/yardsticks.js';
import { gramsText } from '../../fill-weight/weight-text.js';
import type { RunRow } from '../../packing/packing-run-rows.js';
import { say } from '../../platform/sentences/sentences.js';
import { countText } from '../../platform/web/figures-text.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act } from '../../platform/web/kit/act.js';
import { ChoiceEntry, HiddenEntry, NumberEntry, TextEntry, TimeEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import type { Viewer } from '../../platform/web/request.js';
import { ActPage } from '../line/act.page.js';
import type { LineNow } from '../line/line-rows.js';
import { SampleTable } from './sample-table.js';
import { sampleDueText } from './sample-texts.js';

interface HandSampleProps {
  readonly viewer: Viewer;
  readonly at: LineNow;
  readonly due: DueHandSample | null;
  readonly packCount: number;
  readonly scales: readonly { readonly id: string; readonly name: string }[];
  /** Of the run, the latest first. */
  readonly samples: readonly ReadSample[];
  readonly trouble?: FormTrouble | null;
}

/** Packs of the run that is open are weighed one after the other: a big field each, which a scale may fill. */
export function handSamplePage(props: HandSampleProps): VNode {
  const { viewer, at, due, samples } = props;
  const { run } = at;
  return (
    <ActPage viewer={viewer} at={at} title={say('hand-sample-title', { line: at.line.name })}>
      {run === null ? (
        <p class="sentence">{say('hand-sample-no-run')}</p>
      ) : (
        <>
          <p>
            <strong>{due === null ? say('hand-sample-not-planned') : sampleDueText(due)}</strong> {limitsText(run)}
          </p>
          <p>{say('hand-sample-how')}</p>
          <Weighed {...props} run={run} />
          <OtherSizes at={at} packCount={props.packCount} />
          <SampleTable
            caption={say('hand-samples-of-run', { run: run.number })}
            samples={samples}
            nominalGrams={run.nominalGrams}
            timeZone={viewer.timeZone}
          />
        </>
      )}
    </ActPage>
  );
}

/** What the packs are held against. */
export function limitsText({ nominalGrams }: RunRow): string {
  const { t1Milligrams, t2Milligrams } = yardstickFor(nominalGrams * 1000);
  if (t1Milligrams === null || t2Milligrams === null)
    return say('hand-sample-nominal', { grams: countText(nominalGrams) });
  return say('hand-sample-limits', {
    grams: countText(nominalGrams),
    t1: gramsText(t1Milligrams),
    t2: gramsText(t2Milligrams),
  });
}

function Weighed(props: HandSampleProps & { readonly run: RunRow }): VNode {
  const { viewer, at, packCount, scales, samples } = props;
  const trouble = props.trouble ?? null;
  const places = Array.from({ length: packCount }, (_, place) => place);
  const first = places.find((place) => (trouble?.entered[`net${place}`] ?? '') === '') ?? 0;
  return (
    <EntryForm viewer={viewer} action={`/line/${at.line.id}/hand-samples`} trouble={trouble} queue="hand-sample">
      <HiddenEntry name="packs" value={String(packCount)} />
      <div class="sample-packs">
        {places.map((place) => (
          <NumberEntry
            key={place}
            name={`net${place}`}
            label={say('hand-sample-pack', { number: place + 1 })}
            unit="g"
            required
            takesScan
            goesOn
            autofocus={place === first}
            trouble={trouble}
          />
        ))}
      </div>
      <ChoiceEntry
        name="scaleId"
        label={say('hand-sample-scale')}
        required
        value={samples[0]?.scaleId ?? undefined}
        choices={scales.map(({ id, name }) => ({ value: id, says: name }))}
        trouble={trouble}
      />
      <details class="card" open={trouble?.fields['weighedAt'] !== undefined || trouble?.code === 'reason-needed'}>
        <summary>{say('hand-sample-earlier')}</summary>
        <TimeEntry
          name="weighedAt"
          label={say('hand-sample-weighed-at')}
          timeZone={viewer.timeZone}
          trouble={trouble}
        />
        <TextEntry name="reason" label={say('hand-sample-late-why')} maxLength={300} trouble={trouble} />
      </details>
      <Act says={say('hand-sample-record')} />
    </EntryForm>
  );
}

const sizes = [2, 3, 5, 10, 20] as const;

/** Another number of packs than the plan asks for. */
function OtherSizes({ at, packCount }: Pick<HandSampleProps, 'at' | 'packCount'>): VNode {
  return (
    <nav class="other-acts" aria-label={say('hand-sample-other-sizes')}>
      {sizes
        .filter((size) => size !== packCount)
        .map((size) => (
          <a key={size} class="act plain" href={`/line/${at.line.id}/hand-samples?packs=${size}`}>
            {say('hand-sample-size', { count: size })}
          </a>
        ))}
    </nav>
  );
}
