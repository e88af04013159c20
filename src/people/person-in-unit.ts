import type { Tx } from '../platform/database/unit-of-work.js';
import { NotFound } from '../platform/refusal.js';
import { Person } from './person.entity.js';

/** @throws {NotFound} for a person of another site, too */
export async function findPerson(tx: Tx, siteId: string, personId: string): Promise<Person> {
  const person = await tx.findOne(Person, { id: personId, siteId });
  if (person === null) throw new NotFound('person', personId);
  return person;
}
