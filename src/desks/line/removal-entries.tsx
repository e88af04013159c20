import type { VNode } from 'preact';
import { removalFates, removalKinds, removalReasons } from '../../packing/removal.form.js';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { ChoiceEntry, NumberEntry } from '../../platform/web/kit/entries.js';
import { choicesOf } from './tip.page.js';

interface RemovalProps {
  readonly scales: readonly { readonly id: string; readonly name: string }[];
  readonly trouble?: FormTrouble | null | undefined;
}

/** What was taken away, how much of it, why, and where it goes. */
export function RemovalEntries({ scales, trouble }: RemovalProps): VNode {
  return (
    <>
      <ChoiceEntry
        name="kind"
        label={say('field-removal-kind')}
        as="tiles"
        choices={wordsOf('removal-kind', removalKinds)}
        required
        trouble={trouble}
      />
      <div class="side-by-side">
        <NumberEntry name="netGrams" label={say('field-net')} unit="kg" trouble={trouble} />
        <NumberEntry name="packCount" label={say('field-or-packs')} unit={say('unit-packs')} trouble={trouble} />
      </div>
      <ChoiceEntry
        name="scaleId"
        label={say('field-scale')}
        hint={say('field-scale-hint')}
        choices={choicesOf(scales)}
        value={scales.length === 1 ? scales[0]?.id : undefined}
        trouble={trouble}
      />
      <ChoiceEntry
        name="removalReason"
        label={say('field-removal-reason')}
        as="tiles"
        choices={wordsOf('removal-reason', removalReasons)}
        required
        trouble={trouble}
      />
      <ChoiceEntry
        name="fate"
        label={say('field-fate')}
        as="tiles"
        choices={wordsOf('removal-fate', removalFates)}
        required
        trouble={trouble}
      />
    </>
  );
}

/** The words of a family as choices. */
export function wordsOf(
  family: string,
  values: readonly string[],
): readonly { readonly value: string; readonly says: string }[] {
  return values.map((value) => ({ value, says: say(`${family}-${value}`) }));
}
