import type { VNode } from 'preact';
import { knownLanguage } from '../platform/sentences/language.js';
import { say } from '../platform/sentences/sentences.js';
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
      <div class="table-wrap" tabIndex={0} role="region" aria-label={say('people-title')}>
        <table>
          <caption>{say('people-caption')}</caption>
          <thead>
            <tr>
              <th scope="col">{say('people-field-code')}</th>
              <th scope="col">{say('people-field-name')}</th>
              <th scope="col">{say('people-roles')}</th>
            </tr>
          </thead>
          <tbody>
            {people.map((person) => (
              <tr key={person.id}>
                <th scope="row">
                  <a href={`/people/${person.id}`}>{person.code}</a>
                </th>
                <td>{person.name ?? say('name-removed')}</td>
                <td>{rolesText(person)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {people.length === 0 ? <p>{say('nothing-here')}</p> : null}
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
      <dl class="figures">
        <div>
          <dt>{say('people-field-code')}</dt>
          <dd>{person.code}</dd>
        </div>
        <div>
          <dt>{say('people-field-name')}</dt>
          <dd>{person.name ?? say('name-removed')}</dd>
        </div>
        <div>
          <dt>{say('people-roles')}</dt>
          <dd>{rolesText(person)}</dd>
        </div>
        <div>
          <dt>{say('people-language')}</dt>
          <dd>{say('language-in-itself', {}, knownLanguage(person.language) ?? 'en')}</dd>
        </div>
        <div>
          <dt>{say('people-proofs')}</dt>
          <dd>
            {person.proofs.length === 0
              ? say('no-proofs')
              : person.proofs.map((proof) => say(`proof-${proof}`)).join(', ')}
          </dd>
        </div>
      </dl>
      <p>
        <a href="/people">{say('all-people')}</a>
      </p>
    </Shell>
  );
}

function rolesText({ roles }: PersonRow): string {
  return roles.length === 0 ? say('no-roles') : roles.map((role) => say(`role-${role}`)).join(', ');
}
