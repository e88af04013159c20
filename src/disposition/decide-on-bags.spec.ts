import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { aBag, readerOf, someResults } from '../../test/support/a-bag.js';
import { aPerson } from '../../test/support/a-person.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { entriesAbout, journalSequenceOf } from '../journal/journal-entries.js';
import { SetRuleSet } from '../plant/set-rule-set.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { DecideOnBags } from './decide-on-bags.js';
import { Decide } from './decide.js';
import type { DecideOnBagsForm } from './decision.form.js';
import { decisionOn } from './standings.js';

let house: TestHouse;
let plant: Plant;
let reader: ReadFrom;

beforeAll(async () => {
  house = await openHouse();
  plant = await aPlant(house);
  reader = readerOf(house);
});
afterAll(async () => {
  await house.close();
});

const refused = (code: string) => expect.objectContaining({ name: 'Refusal', code });
const decide = (form: DecideOnBagsForm, key?: string) =>
  house.get(DecideOnBags).execute(asking(plant.actor, key), form);

async function testedBags(count: number): Promise<{ id: string; number: string }[]> {
  const bags = [];
  for (let each = 0; each < count; each += 1) {
    const bag = await aBag(house, plant);
    await someResults(house, plant, bag);
    bags.push({ id: bag.id, number: bag.number });
  }
  return bags;
}

const idsOf = (bags: readonly { readonly id: string }[]): string[] => bags.map(({ id }) => id);
const verdictsOf = async (bags: readonly { readonly id: string }[]): Promise<string[]> =>
  Promise.all(bags.map(async ({ id }) => (await decisionOn(reader, 'bulk-bag', id)).verdict));

describe('a decision on several bags at once', () => {
  it('releases all of them, with one entry of the journal that each of them leads to', async () => {
    const bags = await testedBags(3);
    const answer = await decide({ bagIds: idsOf(bags), verdict: 'released' });
    expect(answer.bags.map(({ number }) => number).sort()).toEqual(bags.map(({ number }) => number).sort());
    expect(await verdictsOf(bags)).toEqual(['released', 'released', 'released']);
    const sequences = await Promise.all(
      bags.map(async ({ id }) => {
        const [latest] = await entriesAbout(reader, plant.siteId, { kind: 'bulk-bag', id });
        expect(latest?.action).toBe('decide-on-bags');
        return latest?.sequence;
      }),
    );
    expect(new Set(sequences).size).toBe(1);
  });

  it('releases none where one lacks results, and names that one', async () => {
    const bags = await testedBags(2);
    const untested = await aBag(house, plant);
    const release = decide({ bagIds: [...idsOf(bags), untested.id], verdict: 'released' });
    await expect(release).rejects.toEqual(refused('results-missing'));
    await expect(release).rejects.toMatchObject({ facts: { bag: untested.number } });
    expect(await verdictsOf([...bags, untested])).toEqual(['waiting', 'waiting', 'waiting']);
  });

  it('counts a bag once that is named twice, and a form once that is sent twice', async () => {
    const [bag] = await testedBags(1);
    const bagIds = [bag?.id ?? '', bag?.id ?? ''];
    const first = await decide({ bagIds, verdict: 'released' }, 'press-of-a-button');
    const again = await decide({ bagIds, verdict: 'released' }, 'press-of-a-button');
    expect(again).toEqual(first);
    expect(first.bags).toHaveLength(1);
  });

  it('is not taken where the journal has spoken of a bag since the page was made', async () => {
    const bags = await testedBags(2);
    const seenSequence = await journalSequenceOf(reader, plant.siteId);
    const reject = { kind: 'bulk-bag', subject: bags[1]?.id ?? '', verdict: 'rejected', reason: 'torn' } as const;
    await house.get(Decide).execute(asking(plant.actor), reject);
    const late = decide({ bagIds: idsOf(bags), verdict: 'released', seenSequence });
    await expect(late).rejects.toEqual(refused('page-is-stale'));
    await expect(late).rejects.toMatchObject({ facts: { id: bags[1]?.id } });
    expect(await verdictsOf(bags)).toEqual(['waiting', 'rejected']);
    const fresh = await journalSequenceOf(reader, plant.siteId);
    await decide({ bagIds: idsOf(bags.slice(0, 1)), verdict: 'released', seenSequence: fresh });
  });

  it('says why it rejects', async () => {
    const bags = await testedBags(1);
    await expect(decide({ bagIds: idsOf(bags), verdict: 'rejected' })).rejects.toEqual(
      refused('decision-needs-reason'),
    );
  });
});

describe('a concession', () => {
  it('takes a second person where the rules of the site ask, who is somebody else', async () => {
    const bags = await testedBags(1);
    const concession = { bagIds: idsOf(bags), verdict: 'concession', reason: 'customer takes it' } as const;
    await house.get(SetRuleSet).execute(asking(plant.actor), { kind: 'concession', concessionPersonCount: 2 });
    await expect(decide({ ...concession })).rejects.toEqual(refused('second-person-needed'));
    const same = { ...concession, secondPersonId: plant.actor.personId };
    await expect(decide(same)).rejects.toEqual(refused('second-person-same'));
    const { personId } = await aPerson(house, plant.siteId);
    const { bags: decided } = await decide({ ...concession, secondPersonId: personId });
    const behind = await reader.sql<{ personId: string }>`
      SELECT "person_id" AS "personId" FROM "decision_second_person"
      WHERE "decision_id" = ${decided[0]?.decisionId ?? ''}`;
    expect(behind).toEqual([{ personId }]);
  });
});
