import type { VNode } from 'preact';
import type { PersonRow } from '../../people/people.js';
import { personRoles } from '../../people/person.form.js';
import { mayDo } from '../../platform/actor.js';
import { languages } from '../../platform/sentences/language.js';
import { say } from '../../platform/sentences/sentences.js';
import { ChoiceEntry } from '../../platform/web/kit/entries.js';
import { Table } from '../../platform/web/kit/table.js';
import { StepForm, Text, type StepFormProps } from './step-kit.js';

interface PeopleStepProps extends StepFormProps {
  readonly people: readonly PersonRow[];
}

/** Who works here, and the form that admits somebody. */
export function PeopleStep({ people, ...props }: PeopleStepProps): VNode {
  const mayKeep = mayDo(props.viewer.actor.roles, 'keep-people');
  return (
    <>
      <Table
        caption={say('people-title')}
        columns={[
          { head: say('people-field-name') },
          { head: say('people-field-code') },
          { head: say('people-roles') },
          { head: say('people-proofs') },
        ]}
        rows={people.map(({ id, name, code, roles, proofs }) => ({
          key: id,
          cells: [
            <a href={mayKeep ? `/set-up/people/${id}` : `/people/${id}`}>{name ?? say('name-removed')}</a>,
            code,
            roles.length === 0 ? say('no-roles') : roles.map((role) => say(`role-${role}`)).join(', '),
            proofs.length === 0 ? say('no-proofs') : proofs.map((proof) => say(`proof-${proof}`)).join(', '),
          ],
        }))}
      />
      {mayKeep ? <AdmitForm {...props} /> : null}
    </>
  );
}

function AdmitForm(props: StepFormProps): VNode {
  return (
    <StepForm {...props} to="people" title="set-up-person" says="set-up-admit">
      {(why) => (
        <>
          <Text name="name" why={why} />
          <ChoiceEntry
            name="role"
            label={say('set-up-role')}
            required
            choices={personRoles.map((role) => ({ value: role, says: say(`role-${role}`) }))}
            trouble={why}
          />
          <ChoiceEntry
            name="language"
            label={say('set-up-language')}
            required
            value={props.viewer.language}
            choices={languages.map((language) => ({ value: language, says: say(`language-${language}`) }))}
            trouble={why}
          />
          <Text name="personCode" why={why} isCode isOptional />
        </>
      )}
    </StepForm>
  );
}
