import type { VNode } from 'preact';
import type { HopperRow } from '../plant/plant-rows.js';
import { say } from '../platform/sentences/sentences.js';
import type { FormTrouble } from '../platform/web/form-trouble.js';
import { Act, ActLink } from '../platform/web/kit/act.js';
import { NumberEntry, TextEntry, TimeEntry } from '../platform/web/kit/entries.js';
import { EntryForm } from '../platform/web/kit/entry-form.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import { HopperCautions } from './hopper-cautions.js';

interface NewTrialProps {
  readonly viewer: Viewer;
  readonly hopper: HopperRow;
  readonly trouble: FormTrouble | null;
}

/** How a tracer trial is made, and the form for what was found. */
export function newTrialPage({ viewer, hopper, trouble }: NewTrialProps): VNode {
  return (
    <Shell title={say('trial-new-title', { hopper: hopper.code })} viewer={viewer} use="desk">
      <section class="card" aria-labelledby="how">
        <h2 id="how">{say('trial-how')}</h2>
        <ol>
          {['bags', 'first', 'second', 'samples', 'colour'].map((step) => (
            <li key={step}>{say(`trial-how-${step}`)}</li>
          ))}
        </ol>
      </section>
      <HopperCautions />
      <EntryForm viewer={viewer} id="trial" action={`/hoppers/${hopper.id}/trials/new`} trouble={trouble}>
        <Bags trouble={trouble} />
        <NumberEntry
          name="standardIu"
          label={say('trial-standard')}
          hint={say('trial-standard-hint')}
          unit="IU"
          required
          trouble={trouble}
        />
        <NumberEntry
          name="packGrams"
          label={say('trial-pack-grams')}
          hint={say('trial-pack-grams-hint')}
          unit="g"
          trouble={trouble}
        />
        <TextEntry
          name="samplesText"
          label={say('trial-samples')}
          hint={say('trial-samples-hint')}
          isLong
          isCode
          required
          maxLength={8000}
          trouble={trouble}
        />
        <NumberEntry
          name="insideGrams"
          label={say('trial-inside')}
          hint={say('trial-inside-hint')}
          unit="kg"
          trouble={trouble}
        />
        <TimeEntry
          name="madeAt"
          label={say('trial-made')}
          hint={say('trial-made-hint')}
          timeZone={viewer.timeZone}
          trouble={trouble}
        />
        <TextEntry name="note" label={say('trial-note')} maxLength={500} trouble={trouble} />
        <Act says={say('trial-record')} />
      </EntryForm>
      <div class="acts">
        <ActLink href={`/hoppers/${hopper.id}/flow`} says={say('flow-title', { hopper: hopper.code })} />
      </div>
    </Shell>
  );
}

function Bags({ trouble }: { readonly trouble: FormTrouble | null }): VNode {
  return (
    <>
      <TextEntry
        name="beforeBag"
        label={say('trial-before-bag')}
        hint={say('trial-before-bag-hint')}
        isCode
        required
        maxLength={40}
        trouble={trouble}
      />
      <NumberEntry name="beforeColourIu" label={say('trial-before-colour')} unit="IU" required trouble={trouble} />
      <TextEntry
        name="afterBag"
        label={say('trial-after-bag')}
        hint={say('trial-after-bag-hint')}
        isCode
        required
        maxLength={40}
        trouble={trouble}
      />
      <NumberEntry name="afterColourIu" label={say('trial-after-colour')} unit="IU" required trouble={trouble} />
    </>
  );
}
