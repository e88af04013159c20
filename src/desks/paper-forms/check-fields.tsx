import type { VNode } from 'preact';
import { piecesOf } from '../../line-checks/judge-check.js';
import { say } from '../../platform/sentences/sentences.js';
import { Act, ActLink } from '../../platform/web/kit/act.js';
import { ChoiceEntry, HiddenEntry, NumberEntry, TextEntry } from '../../platform/web/kit/entries.js';
import { FoundAtCheck } from '../line-checks/do-check.page.js';
import type { RowFormProps } from './row-form-props.js';

/** Which check a row is of: the letter that it names. */
export function CheckChoice({ form, row, trouble }: Pick<RowFormProps, 'form' | 'row' | 'trouble'>): VNode {
  return (
    <>
      {trouble === null ? null : (
        <p class="refusal" role="alert">
          {trouble.sentence}
        </p>
      )}
      <p>{say('written-check-which', { row: row.row })}</p>
      <p class="acts">
        {(form.facts.checks ?? []).map(({ letter, title }) => (
          <ActLink
            key={letter}
            href={`/paper-forms/${form.facts.number}?row=${row.row}&check=${letter}#row`}
            says={`${letter} · ${title}`}
          />
        ))}
      </p>
    </>
  );
}

/** What a row says of a check: each piece, what was read, what was done at once, who saw it too. */
export function CheckFields({ form, row, plan, people, trouble }: RowFormProps): VNode | null {
  if (plan === null) return null;
  const printed = form.facts.checks?.find(({ planId }) => planId === plan.planId);
  const isOne = (form.facts.checks ?? []).length === 1;
  return (
    <>
      <p class="sentence">
        {printed?.letter} · {printed?.title}{' '}
        {isOne ? null : (
          <a href={`/paper-forms/${form.facts.number}?row=${row.row}#row`}>{say('written-check-other')}</a>
        )}
      </p>
      <HiddenEntry name="planId" value={plan.planId} />
      <HiddenEntry name="versionId" value={plan.id} />
      {plan.kind === 'torn-bag' ? (
        <TextEntry name="bag" label={say('check-bag')} trouble={trouble} isCode required maxLength={40} />
      ) : null}
      <FoundAtCheck plan={plan} trouble={trouble} />
      {plan.needsSecondPerson ? (
        <ChoiceEntry
          name="secondPersonId"
          label={say('check-second-person')}
          trouble={trouble}
          choices={people.map(({ id, name }) => ({ value: id, says: name }))}
        />
      ) : null}
      <NumberEntry name="packCount" label={say('field-counter')} unit={say('unit-packs')} trouble={trouble} />
    </>
  );
}

/** One press where every box of the row has its tick. A code is read and a torn bag is torn: they have no such press. */
export function AllPassed({ plan, row }: Pick<RowFormProps, 'plan' | 'row'>): VNode | null {
  if (plan === null || plan.kind === 'printed-code' || plan.kind === 'torn-bag') return null;
  const says = piecesOf(plan).length > 1 ? 'written-check-all' : 'written-check-it';
  return <Act says={say(says, { row: row.row })} name="all" value="passed" />;
}
