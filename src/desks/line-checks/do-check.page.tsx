import type { VNode } from 'preact';
import type { CheckPlanRow } from '../../line-checks/check-plan-rows.js';
import type { DueCheck } from '../../line-checks/due-checks.js';
import { piecesOf } from '../../line-checks/judge-check.js';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act, ActLink } from '../../platform/web/kit/act.js';
import { ChoiceEntry, NumberEntry, TextEntry, TimeEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import { dueText, pieceText } from './check-text.js';
import { DoneAtOnce } from './done-at-once.js';
import { Readings, readingsEntered } from './readings-form.js';

interface DoCheckProps {
  readonly viewer: Viewer;
  readonly due: DueCheck;
  /** The code that the line prints now; null: none is known. */
  readonly code: string | null;
  /** The bag that a torn-bag check is about, where it was scanned. */
  readonly bag: string | null;
  /** Who may have seen it too. */
  readonly people: readonly { readonly id: string; readonly name: string }[];
  readonly trouble: FormTrouble | null;
}

/** Makes a check, by readings of test packs or by looking. */
export function doCheckPage({ viewer, due, code, bag, people, trouble }: DoCheckProps): VNode {
  const { plan } = due;
  const title = say('do-check-title', { station: plan.station, line: plan.lineName });
  return (
    <Shell title={title} viewer={viewer} use="tablet">
      <p>
        <strong>{say('check-due', { due: dueText(due) })}</strong>
      </p>
      <p class="sentence">{say(`check-how-${plan.kind}`)}</p>
      <p class="caution">{say(`check-caution-${plan.kind}`)}</p>
      {plan.kind === 'weigher' ? (
        <ByReadings viewer={viewer} plan={plan} people={people} trouble={trouble} />
      ) : (
        <ByLooking viewer={viewer} plan={plan} code={code} bag={bag} people={people} trouble={trouble} />
      )}
      <div class="acts">
        <ActLink href={`/line/${plan.lineId}/checks`} says={say('checks-title', { line: plan.lineName })} />
      </div>
    </Shell>
  );
}

interface FormProps extends Pick<DoCheckProps, 'viewer' | 'people' | 'trouble'> {
  readonly plan: CheckPlanRow;
}

/** Known test packs: the readings come first, and whether they pass is computed; the person signs that. */
function ByReadings({ viewer, plan, people, trouble }: FormProps): VNode {
  const { verdict } = readingsEntered({ plan, trouble });
  const isLate = ['packCount', 'checkedAt', 'reason'].some((name) => (trouble?.entered[name] ?? '') !== '');
  return (
    <EntryForm viewer={viewer} action={`/line/${plan.lineId}/checks/${plan.planId}`} trouble={trouble} queue="check">
      <Readings plan={plan} trouble={trouble} />
      {plan.needsSecondPerson ? <SecondPerson people={people} trouble={trouble} /> : null}
      <details class="card" open={isLate || trouble?.code === 'reason-needed'}>
        <summary>{say('check-counter-or-late')}</summary>
        <Late viewer={viewer} trouble={trouble} />
      </details>
      <div class="acts">
        <Act says={verdict === null ? say('check-look') : say(`browser-sign-${verdict}`)} />
      </div>
    </EntryForm>
  );
}

/** One touch when all is well, else what failed and what was done at once. */
function ByLooking({
  viewer,
  plan,
  code,
  bag,
  people,
  trouble,
}: FormProps & Pick<DoCheckProps, 'code' | 'bag'>): VNode {
  return (
    <EntryForm viewer={viewer} action={`/line/${plan.lineId}/checks/${plan.planId}`} trouble={trouble} queue="check">
      <Pieces plan={plan} />
      {plan.needsSecondPerson ? <SecondPerson people={people} trouble={trouble} /> : null}
      {plan.kind === 'torn-bag' ? (
        <TextEntry name="bag" label={say('check-bag')} value={bag ?? undefined} trouble={trouble} isCode required />
      ) : null}
      <AllPassed plan={plan} code={code} />
      <details class="card" open={trouble !== null || plan.kind === 'torn-bag'}>
        <summary>{say('check-something-failed')}</summary>
        <FoundAtCheck plan={plan} trouble={trouble} />
        <Late viewer={viewer} trouble={trouble} />
        <div class="acts">
          <Act says={say('check-record')} tone="careful" />
        </div>
      </details>
    </EntryForm>
  );
}

/** What is to be put through or looked at, in order. */
function Pieces({ plan }: { readonly plan: CheckPlanRow }): VNode | null {
  if (plan.testPieces.length === 0) return null;
  return (
    <ol class="pieces">
      {plan.testPieces.map((piece) => (
        <li key={piece.code}>
          <strong>{piece.says}</strong> <small>{pieceText(piece)}</small>
        </li>
      ))}
    </ol>
  );
}

/** One touch when all is well. A code is compared: it is the one that is shown, or it is typed below. */
function AllPassed({ plan, code }: { readonly plan: CheckPlanRow; readonly code: string | null }): VNode | null {
  if (plan.kind === 'torn-bag') return null;
  if (plan.kind !== 'printed-code') {
    const says = piecesOf(plan).length > 1 ? say('check-all-passed') : say('check-it-passed');
    return (
      <div class="acts">
        <Act says={says} name="all" value="passed" />
      </div>
    );
  }
  if (code === null) return <p>{say('check-no-code')}</p>;
  return (
    <div class="acts">
      <Act says={say('check-same-code', { code })} name="sameCode" value={code} />
    </div>
  );
}

/** What each piece came to, the code that was read, what was done at once. */
export function FoundAtCheck({
  plan,
  trouble,
}: {
  readonly plan: CheckPlanRow;
  readonly trouble: FormTrouble | null;
}): VNode {
  return (
    <>
      {piecesOf(plan).map(({ code }, place) => (
        <Piece key={code} plan={plan} place={place} trouble={trouble} />
      ))}
      {plan.kind === 'printed-code' ? (
        <TextEntry name="readCode" label={say('check-read-code')} trouble={trouble} isCode maxLength={120} />
      ) : null}
      <DoneAtOnce trouble={trouble} />
    </>
  );
}

interface PieceProps {
  readonly plan: CheckPlanRow;
  readonly place: number;
  readonly trouble: FormTrouble | null;
}

function Piece({ plan, place, trouble }: PieceProps): VNode {
  const piece = plan.testPieces[place];
  const label = piece?.says ?? plan.station;
  const choices = (['passed', 'failed'] as const).map((value) => {
    return { value, says: say(plan.kind === 'torn-bag' ? `bag-is-${value}` : `check-${value}`) };
  });
  return (
    <>
      <ChoiceEntry name={`piece${place}`} label={label} as="tiles" trouble={trouble} choices={choices} />
      {piece?.knownMilligrams == null ? null : (
        <NumberEntry
          name={`reading${place}`}
          label={say('check-reading', { piece: label })}
          hint={pieceText(piece)}
          unit="g"
          trouble={trouble}
        />
      )}
    </>
  );
}

function SecondPerson({ people, trouble }: Pick<DoCheckProps, 'people' | 'trouble'>): VNode {
  return (
    <ChoiceEntry
      name="secondPersonId"
      label={say('check-second-person')}
      required
      trouble={trouble}
      choices={people.map(({ id, name }) => ({ value: id, says: name }))}
    />
  );
}

function Late({ viewer, trouble }: Pick<DoCheckProps, 'viewer' | 'trouble'>): VNode {
  return (
    <>
      <NumberEntry name="packCount" label={say('check-counter')} hint={say('check-counter-hint')} trouble={trouble} />
      <TimeEntry name="checkedAt" label={say('check-at')} timeZone={viewer.timeZone} trouble={trouble} />
      <TextEntry name="reason" label={say('check-late-why')} trouble={trouble} maxLength={300} />
    </>
  );
}
