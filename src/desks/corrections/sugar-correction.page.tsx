import type { VNode } from 'preact';
import { removalFates, removalKinds, removalReasons } from '../../packing/removal.form.js';
import { say } from '../../platform/sentences/sentences.js';
import { ChoiceEntry, NumberEntry, TimeEntry } from '../../platform/web/kit/entries.js';
import { wordsOf } from '../line/removal-entries.js';
import { CorrectionPage, type OneProps } from './correction.page.js';

interface WithScales extends OneProps {
  readonly scales: readonly { readonly id: string; readonly name: string }[];
}

/** Rejects, a sample or sweepings that were taken away otherwise than was recorded, or not at all. */
export function removalCorrectionPage(props: WithScales & { readonly what: string }): VNode {
  const { viewer, trouble, what } = props;
  const asItWas = { hint: say('correction-as-it-was'), trouble };
  return (
    <CorrectionPage {...props} title={say('correction-of-removal', { what })}>
      <ChoiceEntry
        name="kind"
        label={say('field-removal-kind')}
        choices={wordsOf('removal-kind', removalKinds)}
        {...asItWas}
      />
      <div class="side-by-side">
        <NumberEntry name="netGrams" label={say('field-net')} unit="kg" {...asItWas} />
        <NumberEntry name="packCount" label={say('field-or-packs')} unit={say('unit-packs')} {...asItWas} />
      </div>
      <ScaleEntry {...props} />
      <ChoiceEntry
        name="removalReason"
        label={say('field-removal-reason')}
        choices={wordsOf('removal-reason', removalReasons)}
        {...asItWas}
      />
      <ChoiceEntry name="fate" label={say('field-fate')} choices={wordsOf('removal-fate', removalFates)} {...asItWas} />
      <TimeEntry name="removedAt" label={say('correction-removed-at')} timeZone={viewer.timeZone} {...asItWas} />
    </CorrectionPage>
  );
}

/** A bulk bag that weighed otherwise than was recorded, or was not weighed. */
export function weighingCorrectionPage(props: WithScales & { readonly bag: string }): VNode {
  const { viewer, trouble, bag } = props;
  const asItWas = { hint: say('correction-as-it-was'), trouble };
  return (
    <CorrectionPage {...props} title={say('correction-of-weighing', { bag })}>
      <div class="side-by-side">
        <NumberEntry name="grossGrams" label={say('weighing-gross')} unit="kg" {...asItWas} />
        <NumberEntry name="tareGrams" label={say('weighing-tare')} unit="kg" {...asItWas} />
      </div>
      <ScaleEntry {...props} />
      <TimeEntry name="weighedAt" label={say('correction-weighed-at')} timeZone={viewer.timeZone} {...asItWas} />
    </CorrectionPage>
  );
}

function ScaleEntry({ scales, trouble }: WithScales): VNode {
  return (
    <ChoiceEntry
      name="scaleId"
      label={say('field-scale')}
      hint={say('correction-as-it-was')}
      choices={scales.map(({ id, name }) => ({ value: id, says: name }))}
      trouble={trouble}
    />
  );
}
