import { AddMachine } from '../../people/add-machine.js';
import { AddPerson } from '../../people/add-person.js';
import { GiveBadge } from '../../people/give-badge.js';
import { GiveOneTimePassword } from '../../people/give-one-time-password.js';
import { GiveRole } from '../../people/give-role.js';
import { SetOwnPassword } from '../../people/set-own-password.js';
import { SetPin } from '../../people/set-pin.js';
import type { Actor } from '../../platform/actor.js';
import type { Doer } from '../life/act.js';
import { askedByHouse, type Give } from './demo-hand.js';
import { demoBadgeOf, demoPeople, type DemoPerson } from './demo-people.js';

/** One person per role, three line leads, and the counter of the lines. */
export async function setUpPeople(give: Give, siteId: string): Promise<ReadonlyMap<Doer, Actor>> {
  const actors = new Map<Doer, Actor>();
  for (const person of demoPeople) {
    const actor = await addPerson(give, siteId, person);
    if (person.doer !== null) actors.set(person.doer, actor);
  }
  const house = askedByHouse(siteId, 'administrator');
  const { id } = await give(AddMachine).execute(house, { code: 'pack-counter' });
  actors.set('counter', { siteId, personId: null, deviceId: id, roles: ['device'] });
  return actors;
}

async function addPerson(give: Give, siteId: string, person: DemoPerson): Promise<Actor> {
  const house = askedByHouse(siteId, 'administrator');
  const { code, name, language = 'en' } = person;
  const { id } = await give(AddPerson).execute(house, { code, name, language });
  await give(GiveRole).execute(house, id, { role: person.role });
  const actor: Actor = { siteId, personId: id, deviceId: null, roles: [person.role] };
  await choosePassword(give, actor, { siteId, newPassword: person.password });
  if (person.pin === null) return actor;
  await give(GiveBadge).execute(house, id, demoBadgeOf(person));
  const form = { password: person.password, pin: person.pin };
  await give(SetPin).execute({ actor, route: 'demo', key: null }, form, { address: 'demo' });
  return actor;
}

/** As everybody does it: a one-time password from the administrator, then one of one's own. */
async function choosePassword(
  give: Give,
  actor: Actor,
  wish: { readonly siteId: string; readonly newPassword: string },
): Promise<void> {
  const given = await give(GiveOneTimePassword).execute(
    askedByHouse(wish.siteId, 'administrator'),
    actor.personId ?? '',
  );
  const form = { oldPassword: given.password ?? '', newPassword: wish.newPassword };
  await give(SetOwnPassword).execute({ actor, route: 'demo', key: null }, form, { address: 'demo' });
}
