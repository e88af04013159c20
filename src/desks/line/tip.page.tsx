import type { VNode } from 'preact';
import type { TipRow } from '../../hopper/tips.js';
import { say } from '../../platform/sentences/sentences.js';
import { kilogramsText } from '../../platform/web/figures-text.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act } from '../../platform/web/kit/act.js';
import {
  ChoiceEntry,
  HiddenEntry,
  NumberEntry,
  TextEntry,
  TickEntry,
  TimeEntry,
} from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { sayLocally } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { ActPage } from './act.page.js';
import type { LineNow } from './line-rows.js';
import type { LateQuery } from './tip.query.js';

interface LineProps {
  readonly viewer: Viewer;
  readonly at: LineNow;
  readonly trouble?: FormTrouble | null | undefined;
}

type Named = readonly { readonly id: string; readonly name: string }[];

export function choicesOf(named: Named): readonly { value: string; says: string }[] {
  return named.map(({ id, name }) => ({ value: id, says: name }));
}

/** A tip that was made earlier: the time it happened, and why it comes late. */
export function latePage({ viewer, at, known = {}, trouble }: LineProps & { readonly known?: LateQuery }): VNode {
  return (
    <ActPage viewer={viewer} at={at} title={say('line-to-late')}>
      <p>{say('late-says')}</p>
      <EntryForm viewer={viewer} action={`/line/${at.line.id}/late`} trouble={trouble} queue="tip">
        <TextEntry
          name="bag"
          label={say('field-bag')}
          value={known.bag ?? undefined}
          isCode
          required
          maxLength={40}
          trouble={trouble}
          autofocus
        />
        <TimeEntry
          name="openedAt"
          label={say('field-opened-at')}
          at={known.openedAt ?? at.now}
          timeZone={viewer.timeZone}
          trouble={trouble}
        />
        <TextEntry
          name="reason"
          label={say('field-late-reason')}
          hint={say('field-late-reason-hint')}
          trouble={trouble}
        />
        <HiddenEntry name="isOff" value="true" />
        <TickEntry name="happened" label={say('field-happened')} hint={say('field-happened-hint')} trouble={trouble} />
        <div class="acts">
          <Act says={say('line-record')} />
          <Act says={say('correction-look')} tone="plain" sendTo={`/line/${at.line.id}/late/look`} />
        </div>
      </EntryForm>
    </ActPage>
  );
}

/** A bag that was refused and is in all the same: it is recorded as true, and quality decides. */
export function alreadyInPage({ viewer, at, bag, trouble }: LineProps & { readonly bag: string }): VNode {
  return (
    <ActPage viewer={viewer} at={at} title={say('already-in-title', { bag })} startsAtBack>
      <p class="sentence">{say('already-in-says')}</p>
      <EntryForm viewer={viewer} action={`/line/${at.line.id}/already-in`} trouble={trouble}>
        <HiddenEntry name="bag" value={bag} />
        <HiddenEntry name="isOff" value="true" />
        <HiddenEntry name="alreadyIn" value="true" />
        <TimeEntry
          name="openedAt"
          label={say('field-opened-at')}
          at={at.now}
          timeZone={viewer.timeZone}
          trouble={trouble}
        />
        <TextEntry name="reason" label={say('field-what-happened')} trouble={trouble} />
        <Act says={say('already-in-act', { bag })} tone="careful" />
      </EntryForm>
    </ActPage>
  );
}

/** A bag is tipped whose number nobody can read: it was one of these. */
export function unreadPage({ viewer, at, people, trouble }: LineProps & { readonly people: Named }): VNode {
  return (
    <ActPage viewer={viewer} at={at} title={say('line-to-unread')}>
      <p>{say('unread-says')}</p>
      <EntryForm viewer={viewer} action={`/line/${at.line.id}/unread`} trouble={trouble}>
        {(['first', 'second', 'third', 'fourth'] as const).map((name, place) => (
          <TextEntry
            key={name}
            name={name}
            label={say('field-candidate', { place: place + 1 })}
            isCode
            required={place < 2}
            maxLength={40}
            trouble={trouble}
            autofocus={place === 0}
          />
        ))}
        <ChoiceEntry
          name="secondPersonId"
          label={say('field-second-person')}
          choices={choicesOf(people)}
          required
          trouble={trouble}
        />
        <TimeEntry name="openedAt" label={say('field-opened-at')} timeZone={viewer.timeZone} trouble={trouble} />
        <TextEntry name="reason" label={say('field-late-reason')} trouble={trouble} />
        <Act says={say('line-record')} />
      </EntryForm>
    </ActPage>
  );
}

interface OffProps extends LineProps {
  readonly tip: TipRow;
  readonly scales: Named;
}

/** A bag hangs: it comes off empty, or is weighed back with what is left in it. */
export function offPage({ viewer, at, tip, scales, trouble }: OffProps): VNode {
  const action = `/line/${at.line.id}/off/${tip.id}`;
  const bag = tip.bagNumber ?? tip.binNumber ?? '?';
  const facts = { bag, kilograms: kilogramsText(tip.netGrams), at: tip.openedAt };
  return (
    <ActPage viewer={viewer} at={at} title={say('off-title', { bag })} startsAtBack>
      <p class="sentence">{sayLocally('off-says', facts, viewer.timeZone)}</p>
      <p class="caution">{say('caution-suspended-bag')}</p>
      <EntryForm viewer={viewer} action={action} queue="tip">
        <Act says={say('band-off-empty')} />
      </EntryForm>
      <h2>{say('off-weigh-back')}</h2>
      <EntryForm viewer={viewer} action={action} trouble={trouble} queue="tip" id="weigh-back">
        <NumberEntry name="grossGrams" label={say('field-gross')} unit="kg" required trouble={trouble} />
        <NumberEntry name="tareGrams" label={say('field-tare')} unit="kg" required trouble={trouble} />
        <ChoiceEntry
          name="scaleId"
          label={say('field-scale')}
          choices={choicesOf(scales)}
          value={scales.length === 1 ? scales[0]?.id : undefined}
          required
          trouble={trouble}
        />
        <Act says={say('off-record-rest')} tone="plain" />
      </EntryForm>
    </ActPage>
  );
}
