import type { VNode } from 'preact';
import { checkActions } from '../../line-checks/check-words.js';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { ChoiceEntry, TextEntry } from '../../platform/web/kit/entries.js';

/** What was done at once about a check that failed, and a note. */
export function DoneAtOnce({ trouble }: { readonly trouble: FormTrouble | null }): VNode {
  return (
    <>
      <ChoiceEntry
        name="action"
        label={say('check-action')}
        as="tiles"
        trouble={trouble}
        choices={checkActions.map((action) => ({ value: action, says: say(`check-action-${action}`) }))}
      />
      <TextEntry name="note" label={say('check-note')} trouble={trouble} maxLength={300} />
    </>
  );
}
