import type { ComponentChildren, VNode } from 'preact';
import { mayDo } from '../../platform/actor.js';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act, ActLink } from '../../platform/web/kit/act.js';
import { ChoiceEntry, HiddenEntry, TextEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { sayLocally } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import type { HoldPreview } from './hold-new.js';
import type { ShiftChoices } from './hold-times.js';
import { HoldTimes } from './hold-times-boxes.js';
import { ReachTables } from './reach-tables.js';

/** Something that a typed code may mean, or a part of a delivery. */
export interface HoldChoice {
  readonly href: string;
  readonly says: string;
  readonly about: string;
}

interface HoldChooseProps {
  readonly viewer: Viewer;
  readonly code: string;
  /** Null before anything was asked. */
  readonly choices: readonly HoldChoice[] | null;
  readonly next: string | null;
  readonly shifts: ShiftChoices;
  /** What was asked of times cannot be held. */
  readonly refusal?: string | null;
}

/** What is to be held: by any code. */
export function holdChoosePage({ viewer, code, choices, next, shifts, refusal = null }: HoldChooseProps): VNode {
  return (
    <Shell title={say('hold-new-title')} viewer={viewer}>
      <form class="card" method="get" action="/quality/holds/new">
        {next === null ? null : <HiddenEntry name="next" value={next} />}
        <label for="code">{say('hold-new-code')}</label>
        <div class="search">
          <input id="code" name="code" type="text" value={code} maxLength={200} autocomplete="off" autofocus />
          <Act says={say('hold-new-find')} />
        </div>
      </form>
      {choices === null ? <p class="quiet">{say('hold-new-hint')}</p> : <Choices code={code} choices={choices} />}
      {refusal === null ? null : (
        <section class="card refusal" role="alert">
          <p>{refusal}</p>
        </section>
      )}
      <HoldTimes shifts={shifts} next={next} />
    </Shell>
  );
}

function Choices({ code, choices }: { readonly code: string; readonly choices: readonly HoldChoice[] }): VNode {
  if (choices.length === 0) {
    return (
      <section class="card refusal" role="alert">
        <p>{say('code-not-found', { code })}</p>
      </section>
    );
  }
  return (
    <section class="card" aria-labelledby="which">
      <h2 id="which">{say('hold-new-which')}</h2>
      <ul class="choices">
        {choices.map(({ href, says, about }) => (
          <li key={href}>
            <a href={href}>{says}</a> <span class="quiet">{about}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

interface HoldNewProps {
  readonly viewer: Viewer;
  readonly preview: HoldPreview;
  readonly next: string | null;
  readonly trouble: FormTrouble | null;
  /** Wider or narrower than this. */
  readonly others: readonly HoldChoice[];
}

/** A hold before it is placed: what it reaches, what has left first, and why. */
export function holdNewPage({ viewer, preview, next, trouble, others }: HoldNewProps): VNode {
  const { fromCount, toCount, fromAt, untilAt, subject } = preview;
  const part = fromCount === null || toCount === null ? null : { from: fromCount + 1, to: toCount };
  return (
    <Shell title={say('hold-new-of', { subject })} viewer={viewer}>
      {part === null ? null : <p class="sentence">{say('hold-new-part', part)}</p>}
      {fromAt === null || untilAt === null || preview.kind === 'dryer-shift' ? null : (
        <p class="sentence">{sayLocally('hold-new-times', { from: fromAt, until: untilAt }, viewer.timeZone)}</p>
      )}
      {preview.already.map((hold) => (
        <p key={hold.id} class="caution">
          {say('hold-new-already', { hold: hold.number, reason: hold.reason })}
        </p>
      ))}
      <ReachTables preview={preview} />
      {others.length === 0 ? null : (
        <div class="acts">
          {others.map(({ href, says }) => (
            <ActLink key={href} href={href} says={says} />
          ))}
        </div>
      )}
      <PlaceBox viewer={viewer} trouble={trouble}>
        <HiddenEntry name="kind" value={preview.kind} />
        <HiddenEntry name="id" value={preview.id} />
        {fromCount === null ? null : <HiddenEntry name="fromCount" value={String(fromCount)} />}
        {toCount === null ? null : <HiddenEntry name="toCount" value={String(toCount)} />}
        {fromAt === null ? null : <HiddenEntry name="fromAt" value={fromAt} />}
        {untilAt === null ? null : <HiddenEntry name="untilAt" value={untilAt} />}
        {next === null ? null : <HiddenEntry name="next" value={next} />}
      </PlaceBox>
    </Shell>
  );
}

interface PlaceBoxProps {
  readonly viewer: Viewer;
  readonly trouble: FormTrouble | null;
  readonly children: ComponentChildren;
}

function PlaceBox({ viewer, trouble, children }: PlaceBoxProps): VNode {
  const mayClass = mayDo(viewer.actor.roles, 'lift-holds');
  return (
    <section class="card" aria-labelledby="place">
      <h2 id="place">{say('hold-place-head')}</h2>
      <p>{say(mayClass ? 'hold-place-says-quality' : 'hold-place-says')}</p>
      <EntryForm viewer={viewer} action="/quality/holds/new" trouble={trouble}>
        {children}
        <TextEntry
          name="reason"
          label={say('hold-place-reason')}
          hint={say('hold-place-reason-hint')}
          maxLength={500}
          trouble={trouble}
          isLong
          required
        />
        {mayClass ? (
          <ChoiceEntry
            name="hazard"
            label={say('hold-place-class')}
            as="tiles"
            choices={[
              { value: 'safety', says: say('hazard-safety'), about: say('hazard-safety-covers') },
              { value: 'quality', says: say('hazard-quality'), about: say('hazard-quality-covers') },
            ]}
            trouble={trouble}
          />
        ) : null}
        <Act says={say('hold-place-act')} accessKey="h" />
      </EntryForm>
    </section>
  );
}
