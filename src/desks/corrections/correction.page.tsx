import type { ComponentChildren, VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act, ActLink } from '../../platform/web/kit/act.js';
import { ChoiceEntry, NumberEntry, TextEntry, TimeEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';

interface CorrectionProps {
  readonly viewer: Viewer;
  readonly title: string;
  /** What is recorded now, in one sentence. */
  readonly says: string;
  /** Where the form is sent to. */
  readonly action: string;
  readonly trouble: FormTrouble | null;
  /** What may be entered right, beside why and the reason. */
  readonly children: ComponentChildren;
}

/** A record that was wrong: it did not occur, or something in it is put right. What that changes is shown first. */
export function CorrectionPage({ viewer, title, says, action, trouble, children }: CorrectionProps): VNode {
  return (
    <Shell title={title} viewer={viewer}>
      <p class="sentence">{says}</p>
      <p>{say('correction-says')}</p>
      <EntryForm viewer={viewer} action={action} trouble={trouble}>
        <ChoiceEntry
          name="why"
          label={say('correction-why')}
          as="tiles"
          required
          trouble={trouble}
          choices={[
            { value: 'incorrect-data', says: say('correction-incorrect') },
            { value: 'did-not-occur', says: say('correction-not-occurred') },
          ]}
        />
        {children}
        <TextEntry name="reason" label={say('correction-reason')} required maxLength={300} trouble={trouble} />
        <Act says={say('correction-look')} />
      </EntryForm>
    </Shell>
  );
}

export type OneProps = Omit<CorrectionProps, 'title' | 'children'>;

export function tipCorrectionPage(props: OneProps & { readonly bag: string }): VNode {
  const { bag, viewer, trouble } = props;
  const times = { timeZone: viewer.timeZone, trouble };
  return (
    <CorrectionPage {...props} title={say('correction-of-tip', { bag })}>
      <TextEntry
        name="bag"
        label={say('correction-bag')}
        hint={say('correction-as-it-was')}
        isCode
        maxLength={40}
        trouble={trouble}
      />
      <TimeEntry name="openedAt" label={say('correction-opened-at')} hint={say('correction-as-it-was')} {...times} />
      <TimeEntry name="offAt" label={say('correction-off-at')} hint={say('correction-as-it-was')} {...times} />
    </CorrectionPage>
  );
}

export function countCorrectionPage(props: OneProps & { readonly run: string }): VNode {
  return (
    <CorrectionPage {...props} title={say('correction-of-count', { run: props.run })}>
      <NumberEntry name="packCount" label={say('correction-pack-count')} trouble={props.trouble} />
    </CorrectionPage>
  );
}

export function filmCorrectionPage(props: OneProps & { readonly film: string; readonly run: string }): VNode {
  const { film, run, trouble } = props;
  return (
    <CorrectionPage {...props} title={say('correction-of-film', { film, run })}>
      <TextEntry
        name="film"
        label={say('correction-film')}
        hint={say('correction-as-it-was')}
        isCode
        maxLength={60}
        trouble={trouble}
      />
      <NumberEntry
        name="packCount"
        label={say('correction-first-pack')}
        hint={say('correction-as-it-was')}
        trouble={trouble}
      />
    </CorrectionPage>
  );
}

export function codeCorrectionPage(props: OneProps & { readonly code: string; readonly run: string }): VNode {
  const { code, run, viewer, trouble } = props;
  const asItWas = { hint: say('correction-as-it-was'), trouble };
  return (
    <CorrectionPage {...props} title={say('correction-of-code', { code, run })}>
      <TextEntry name="code" label={say('correction-code')} isCode maxLength={120} {...asItWas} />
      <NumberEntry name="packCount" label={say('correction-code-first-pack')} {...asItWas} />
      <TimeEntry name="changedAt" label={say('correction-code-at')} timeZone={viewer.timeZone} {...asItWas} />
    </CorrectionPage>
  );
}

interface EmptyProps extends OneProps {
  readonly hopper: string;
  readonly people: readonly { readonly id: string; readonly name: string }[];
}

export function emptyCorrectionPage(props: EmptyProps): VNode {
  const { hopper, people, viewer, trouble } = props;
  return (
    <CorrectionPage {...props} title={say('correction-of-empty', { hopper })}>
      <TimeEntry
        name="provenAt"
        label={say('correction-proven-at')}
        hint={say('correction-as-it-was')}
        timeZone={viewer.timeZone}
        trouble={trouble}
      />
      <NumberEntry
        name="residueGrams"
        label={say('correction-residue')}
        hint={say('correction-as-it-was')}
        unit="kg"
        trouble={trouble}
      />
      <ChoiceEntry
        name="secondPersonId"
        label={say('correction-second-person')}
        hint={say('correction-second-person-hint')}
        choices={people.map(({ id, name }) => ({ value: id, says: name }))}
        trouble={trouble}
      />
    </CorrectionPage>
  );
}

interface NotLastProps extends Pick<OneProps, 'viewer' | 'says'> {
  readonly hopper: string;
  readonly hopperId: string;
}

/** Later periods rest on this empty: what to do instead, and the way there. */
export function emptyNotLastPage({ viewer, hopper, hopperId, says }: NotLastProps): VNode {
  return (
    <Shell title={say('correction-of-empty', { hopper })} viewer={viewer}>
      <p class="sentence">{says}</p>
      <p class="caution">{say('correction-empty-not-last')}</p>
      <div class="acts">
        <ActLink href={`/hoppers/${hopperId}`} says={say('correction-empty-periods', { hopper })} />
      </div>
    </Shell>
  );
}
