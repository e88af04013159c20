import type { ComponentChildren, VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act } from '../../platform/web/kit/act.js';
import { ChoiceEntry, TextEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import type { Viewer } from '../../platform/web/request.js';
import type { SecondPerson } from './second-people.js';

interface DecisionBoxProps {
  readonly viewer: Viewer;
  readonly action: string;
  readonly trouble: FormTrouble | null;
  readonly seen?: { readonly kind: string; readonly id: string; readonly sequence: number };
  readonly seconds: readonly SecondPerson[];
  /** What is decided on, where the form itself chooses. */
  readonly children?: ComponentChildren;
}

const verdicts = ['released', 'rejected', 'concession', 'waiting'] as const;

/** Where quality decides. The verdict is never chosen beforehand: people sign, the tool does not. */
export function DecisionBox({ viewer, action, trouble, seen, seconds, children }: DecisionBoxProps): VNode {
  return (
    <section class="card" id="decision" aria-labelledby="decision-head">
      <h2 id="decision-head">{say('decision-head')}</h2>
      <EntryForm viewer={viewer} action={action} trouble={trouble} {...(seen === undefined ? {} : { seen })}>
        {children}
        <ChoiceEntry
          name="verdict"
          label={say('decision-verdict')}
          as="tiles"
          choices={verdicts.map((value) => ({ value, says: say(`verdict-${value}`) }))}
          trouble={trouble}
          required
        />
        <TextEntry
          name="reason"
          label={say('decision-reason')}
          hint={say('decision-reason-hint')}
          maxLength={1000}
          trouble={trouble}
          isLong
        />
        <ChoiceEntry
          name="secondPersonId"
          label={say('decision-second')}
          hint={say('decision-second-hint')}
          choices={seconds.map(({ id, name }) => ({ value: id, says: name }))}
          trouble={trouble}
        />
        <Act says={say('decision-act')} accessKey="d" />
      </EntryForm>
    </section>
  );
}
