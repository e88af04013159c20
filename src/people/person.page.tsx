import type { VNode } from 'preact';
import { knownLanguage } from '../platform/sentences/language.js';
import { say } from '../platform/sentences/sentences.js';
import { Figures } from '../platform/web/kit/figures.js';
import { Table } from '../platform/web/kit/table.js';
import { OlderEntries } from '../platform/web/older-entries.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import type { PersonRow } from './people.js';

interface PeopleProps {
  readonly viewer: Viewer;
  readonly people: readonly PersonRow[];
  /** The id before which older entries stand; null on the last page. */
  readonly older: string | null;
}

/** Who works here, by code, name and role. */
export function peoplePage({ viewer, people, older }: PeopleProps): VNode {
  return (
    <Shell title={say('people-title')} viewer={viewer}>
      <p class="quiet">{say('people-says')}</p>
      <Table
        caption={say('people-caption')}
        columns={[
          { head: say('people-field-code') },
          { head: say('people-field-name') },
          { head: say('people-roles') },
        ]}
        rows={people.map((person) => ({
          key: person.id,
          cells: [
            <a href={`/people/${person.id}`}>{person.code}</a>,
            person.name ?? say('name-removed'),
            rolesText(person),
          ],
        }))}
      />
      <OlderEntries path="/people" older={older} />
    </Shell>
  );
}

interface PersonProps {
  readonly viewer: Viewer;
  readonly person: PersonRow;
}

/** One person: what they may do, and by what they prove who they are. */
export function personPage({ viewer, person }: PersonProps): VNode {
  return (
    <Shell title={person.name ?? person.code} viewer={viewer}>
      <Figures
        of={[
          { label: say('people-field-code'), value: person.code },
          { label: say('people-field-name'), value: person.name ?? say('name-removed') },
          { label: say('people-roles'), value: rolesText(person) },
          {
            label: say('people-language'),
            value: say('language-in-itself', {}, knownLanguage(person.language) ?? 'en'),
          },
          {
            label: say('people-proofs'),
            value:
              person.proofs.length === 0
                ? say('no-proofs')
                : person.proofs.map((proof) => say(`proof-${proof}`)).join(', '),
          },
        ]}
      />
      <p>
        <a href="/people">{say('all-people')}</a>
      </p>
    </Shell>
  );
}

function rolesText({ roles }: PersonRow): string {
  return roles.length === 0 ? say('no-roles') : roles.map((role) => say(`role-${role}`)).join(', ');
}
