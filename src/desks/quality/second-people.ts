import { peopleOf } from '../../people/people.js';
import type { Actor } from '../../platform/actor.js';
import type { ReadFrom } from '../../platform/database/reading.js';

/** Somebody who may stand behind a concession. */
export interface SecondPerson {
  readonly id: string;
  readonly name: string;
}

/** Those beside the one who decides who may stand behind a concession: of quality, or who leads the plant. */
export async function secondPeopleOf(from: ReadFrom, actor: Actor): Promise<readonly SecondPerson[]> {
  const people = await peopleOf(from, actor.siteId, { before: null, limit: 200 });
  return people
    .filter(({ id, roles }) => id !== actor.personId && roles.some((role) => mayStandBehind.has(role)))
    .map(({ id, name, code }) => ({ id, name: name ?? code }))
    .sort((one, other) => one.name.localeCompare(other.name, 'en'));
}

const mayStandBehind: ReadonlySet<string> = new Set(['quality-officer', 'plant-manager']);
