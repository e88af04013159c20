import type { VNode } from 'preact';
import { changeoverRungs, type RungWord } from '../../hopper/changeover-rungs.js';
import type { ChangeoverRow, RungRow } from '../../hopper/changeovers.js';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act, ActLink } from '../../platform/web/kit/act.js';
import { ChoiceEntry, HiddenEntry, NumberEntry, TextEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { clockText } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { ActPage } from './act.page.js';
import type { LineNow } from './line-rows.js';
import { choicesOf } from './tip.page.js';

type Named = readonly { readonly id: string; readonly name: string }[];

interface StartProps {
  readonly viewer: Viewer;
  readonly at: LineNow;
  readonly formats: Named;
  readonly trouble: FormTrouble | null;
}

/** What comes next on this line? */
export function changeoverStartPage({ viewer, at, formats, trouble }: StartProps): VNode {
  return (
    <ActPage viewer={viewer} at={at} title={say('line-to-changeover')} startsAtBack>
      <p>{say('changeover-says')}</p>
      <EntryForm viewer={viewer} action={`/line/${at.line.id}/changeover`} trouble={trouble}>
        <ChoiceEntry
          name="formatId"
          label={say('field-next-format')}
          as="tiles"
          choices={choicesOf(formats)}
          required
          trouble={trouble}
        />
        <Act says={say('changeover-begin')} />
      </EntryForm>
    </ActPage>
  );
}

interface ChangeoverProps {
  readonly viewer: Viewer;
  readonly at: LineNow;
  readonly changeover: ChangeoverRow;
  readonly names: ReadonlyMap<string, string>;
  readonly people: Named;
  readonly trouble: FormTrouble | null;
}

/** The ladder: what is done, the one rung that comes next, and what waits. */
export function changeoverPage(props: ChangeoverProps): VNode {
  const { viewer, at, changeover, trouble } = props;
  const title = say('changeover-title', { format: changeover.toFormatName });
  return (
    <ActPage viewer={viewer} at={at} title={title} startsAtBack={!startsAtField(props)}>
      <ol class="ladder">
        {changeoverRungs.map((rung) => (
          <li key={rung} class={changeover.next === rung ? 'next' : undefined}>
            <strong>{say(`rung-${rung}`)}</strong>
            <Rung {...props} rung={rung} done={changeover.rungs.find((one) => one.rung === rung) ?? null} />
          </li>
        ))}
      </ol>
      <details>
        <summary>{say('changeover-drop')}</summary>
        <EntryForm viewer={viewer} action={`/line/${at.line.id}/changeover/${changeover.id}/drop`} trouble={null}>
          <TextEntry name="reason" label={say('field-what-happened')} required maxLength={300} trouble={trouble} />
          <Act says={say('changeover-drop')} tone="careful" />
        </EntryForm>
      </details>
    </ActPage>
  );
}

/** The next rung asks for something that can be entered at once: what went back, or the other person's badge. */
function startsAtField({ at, changeover }: ChangeoverProps): boolean {
  return changeover.next === 'film-back' || (changeover.next === 'code-checked' && isNewRun(at, changeover));
}

function isNewRun({ run }: LineNow, { fromRunId }: ChangeoverRow): boolean {
  return run !== null && run.id !== fromRunId;
}

interface RungProps extends ChangeoverProps {
  readonly rung: RungWord;
  readonly done: RungRow | null;
}

function Rung(props: RungProps): VNode {
  const { viewer, at, changeover, rung, done, names, trouble } = props;
  if (done !== null) {
    const facts = {
      at: clockText(done.doneAt, viewer.timeZone),
      count: done.count ?? '',
      note: [done.note, names.get(done.secondPersonId ?? '')].filter((part) => part != null).join(' · '),
    };
    return <p>{say('rung-done', facts)}</p>;
  }
  if (changeover.next !== rung) return <p class="quiet">{say('rung-waits')}</p>;
  return (
    <>
      <RungWay {...props} />
      <EntryForm viewer={viewer} action={`/line/${at.line.id}/changeover/${changeover.id}/rungs`} trouble={trouble}>
        <HiddenEntry name="rung" value={rung} />
        <RungProof {...props} />
        <Act says={say('rung-act')} />
      </EntryForm>
    </>
  );
}

/** Where the record is made that proves the rung. */
function RungWay({ at, changeover, rung }: RungProps): VNode | null {
  const page = `/line/${at.line.id}`;
  switch (rung) {
    case 'last-pack-out':
      return at.run === null ? null : <ActLink href={`${page}/run`} says={say('line-to-run')} tone="asked" />;
    case 'hopper-empty':
      return <ActLink href={`${page}/level`} says={say('level-empty-title')} tone="asked" />;
    case 'reject-bin-closed':
      return <ActLink href={`${page}/bin`} says={say('line-to-bin')} />;
    case 'film-back':
      return null;
    case 'code-checked':
      return isNewRun(at, changeover) ? (
        <div class="acts">
          <ActLink href={`${page}/film`} says={say('line-to-film')} />
          <ActLink href={`${page}/code`} says={say('line-to-code')} />
        </div>
      ) : (
        <ActLink href={`${page}/run`} says={say('line-start-run')} tone="asked" />
      );
  }
}

function RungProof({ viewer, at, changeover, rung, people, trouble }: RungProps): VNode | null {
  switch (rung) {
    case 'reject-bin-closed':
      return (
        <div class="side-by-side">
          <TextEntry name="bin" label={say('field-bin-number')} isCode maxLength={40} trouble={trouble} />
          <TextEntry name="note" label={say('field-bin-note')} maxLength={200} trouble={trouble} />
        </div>
      );
    case 'film-back':
      return <NumberEntry name="count" label={say('field-film-back')} required trouble={trouble} autofocus />;
    case 'code-checked':
      return <SecondPerson viewer={viewer} people={people} isAwaited={isNewRun(at, changeover)} />;
    default:
      return null;
  }
}

/** Who reads the code too shows who they are. */
function SecondPerson({
  viewer,
  people,
  isAwaited,
}: Pick<RungProps, 'viewer' | 'people'> & { readonly isAwaited: boolean }): VNode {
  if (viewer.deviceCode === null) {
    return (
      <div class="side-by-side">
        <TextEntry name="code" label={say('field-other-code')} maxLength={60} autofocus={isAwaited} />
        <TextEntry name="password" label={say('field-other-password')} type="password" maxLength={200} />
      </div>
    );
  }
  return (
    <>
      <TextEntry
        name="badge"
        label={say('field-other-badge')}
        type="password"
        maxLength={60}
        takesScan
        autofocus={isAwaited}
      />
      {people.length === 0 ? null : (
        <>
          <ChoiceEntry name="person" label={say('field-other-person')} as="tiles" choices={choicesOf(people)} />
          <TextEntry name="pin" label={say('field-pin')} type="password" maxLength={8} />
        </>
      )}
    </>
  );
}
