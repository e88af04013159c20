import type { VNode } from 'preact';
import { correctionReasons } from '../journal/void-fact.js';
import { say } from '../platform/sentences/sentences.js';
import type { FormTrouble } from '../platform/web/form-trouble.js';
import { Act } from '../platform/web/kit/act.js';
import { ChoiceEntry, TextEntry } from '../platform/web/kit/entries.js';
import { EntryForm } from '../platform/web/kit/entry-form.js';
import type { Viewer } from '../platform/web/request.js';

interface WithdrawBoxProps {
  readonly viewer: Viewer;
  readonly action: string;
  readonly says: string;
  readonly trouble: FormTrouble | null;
}

/** Withdraws a record of how a hopper flows: why, and in whose words. Folded, for it is done rarely. */
export function WithdrawBox({ viewer, action, says, trouble }: WithdrawBoxProps): VNode {
  return (
    <details class="card" open={trouble !== null}>
      <summary>{says}</summary>
      <EntryForm viewer={viewer} id="withdraw" action={action} trouble={trouble}>
        <ChoiceEntry
          name="why"
          label={say('flow-withdraw-why')}
          as="tiles"
          required
          choices={correctionReasons.map((why) => ({ value: why, says: say(`flow-withdraw-${why}`) }))}
          trouble={trouble}
        />
        <TextEntry name="reason" label={say('flow-withdraw-words')} maxLength={300} required trouble={trouble} />
        <Act says={say('flow-withdraw-act')} tone="careful" />
      </EntryForm>
    </details>
  );
}
