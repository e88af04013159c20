import type { VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { NumberEntry } from '../../platform/web/kit/entries.js';

interface FigureEntriesProps {
  readonly trouble: FormTrouble | null;
  /** What the setpoint stands filled in with, in grams. */
  readonly setpoint?: string | undefined;
  /** What it means to leave one empty. */
  readonly hint: string;
}

/** The figures of a setting, as they stand on the machines. */
export function FigureEntries({ trouble, setpoint, hint }: FigureEntriesProps): VNode {
  const common = { unit: 'g', hint, trouble };
  return (
    <>
      <NumberEntry name="setpointGrams" label={say('field-name-setpoint-grams')} value={setpoint} {...common} />
      <NumberEntry name="rejectBelowGrams" label={say('field-name-reject-below-grams')} {...common} />
      <NumberEntry name="rejectAboveGrams" label={say('field-name-reject-above-grams')} {...common} />
    </>
  );
}
