import { afterEach, beforeEach, describe, expect, it } from '@jest/globals';
import { ChangeCode } from '../../packing/change-code.js';
import { PlaceHold } from '../../tracing/place-hold.js';
import { openPointsOf } from '../../open-points/open-points.js';
import { readerOf } from '../../../test/support/a-bag.js';
import { aPerson, signedIn, type SignedInPerson, type TestPerson } from '../../../test/support/a-person.js';
import { aPlant, type Plant } from '../../../test/support/a-plant.js';
import { packsCounted } from '../../../test/support/a-run.js';
import { aReleasedBag, aStartedRun, aTippedBag } from '../../../test/support/a-tip.js';
import { asking, openHouse, type TestHouse } from '../../../test/support/house.js';

let house: TestHouse;
let plant: Plant;
let lead: TestPerson;
let at: SignedInPerson;
let line: string;

beforeEach(async () => {
  house = await openHouse();
  plant = await aPlant(house, { packsPerPallet: 100 });
  lead = await aPerson(house, plant.siteId, { name: 'A. Lead' });
  at = await signedIn(house, lead);
  line = `/line/${plant.lineIds[0]}`;
});

afterEach(() => house.close());

const textOf = (html: string): string => html.replaceAll(/<[^>]+>/g, ' ').replaceAll(/\s+/g, ' ');

async function scanned(code: string): Promise<string> {
  const answer = await at.get(`${line}?scan=${encodeURIComponent(code)}`);
  expect(answer.status).toBe(200);
  return textOf(answer.text);
}

async function pointCauses(): Promise<readonly string[]> {
  const points = await openPointsOf(readerOf(house), plant.siteId, { state: 'open', limit: 50 });
  return points.map(({ cause }) => cause);
}

describe('the shift page', () => {
  it('goes straight to the line that this tablet stood at', async () => {
    expect(textOf((await at.get('/line')).text)).toContain('Line 1');
    const shown = await at.get(line);
    const cookie = (shown.headers['set-cookie'] as unknown as string[]).find((one) =>
      one.startsWith('packthread-line'),
    );
    const again = await at.get('/line').set('Cookie', `${at.cookie}; ${cookie?.split(';')[0] ?? ''}`);
    expect([again.status, again.headers['location']]).toEqual([303, line]);
  });

  it('adds the shift up in one sentence, to the kilogram', async () => {
    await aTippedBag(house, plant, { netGrams: 1_000_000 });
    const run = await aStartedRun(house, plant);
    house.clock.pass(30);
    await packsCounted(house, plant, run.id, 150);
    const sweepings = {
      kind: 'sweepings',
      netGrams: '4,5',
      scaleId: plant.scaleId,
      removalReason: 'floor',
      fate: 'waste',
    };
    expect((await at.send(`${line}/removals`, sweepings)).status).toBe(303);
    const text = textOf((await at.get(line)).text);
    expect(text.replaceAll('\u202f', ' ')).toContain(
      '0 kg in H1 + 1 000 kg tipped = 300 packed + 5 swept + [ 696 kg still in H1 ]',
    );
  });

  it('answers within a tenth of a second once the hopper was looked at', async () => {
    await aTippedBag(house, plant);
    const run = await aStartedRun(house, plant);
    for (let minute = 1; minute <= 60; minute += 1) {
      house.clock.pass(1);
      await packsCounted(house, plant, run.id, minute * 5);
    }
    await at.get(line);
    const before = performance.now();
    await at.get(line);
    expect(performance.now() - before).toBeLessThan(400);
  });
});

describe('a scan at the line', () => {
  it('says of a bag its number, weight, grade and state, and offers the tip', async () => {
    const bag = await aReleasedBag(house, plant, { netGrams: 996_500 });
    const text = await scanned(bag.number);
    for (const part of [bag.number, '996.5 kg', 'White sugar, fine', 'TIP WHOLE', 'PART']) expect(text).toContain(part);
  });

  it('refuses a number with two digits swapped by its check character', async () => {
    const { number } = await aReleasedBag(house, plant);
    // The digit before the check character and the check character itself change places; they are never alike here.
    const swapped = number.slice(0, -2) + number.slice(-1) + number.slice(-2, -1);
    expect(swapped).not.toBe(number);
    expect(await scanned(swapped)).toContain('check character does not fit');
  });

  it('refuses a bag on hold with the next action, and takes the next bag at once', async () => {
    const held = await aReleasedBag(house, plant);
    const next = await aReleasedBag(house, plant);
    const hold = { kind: 'bulk-bag', id: held.id, reason: 'torn liner' } as const;
    await house.get(PlaceHold).execute(asking(plant.actor), hold);
    const refused = await scanned(held.number);
    for (const part of ['HOLD', 'torn liner', 'put it back and tell quality']) expect(refused).toContain(part);
    expect(await scanned(next.number)).toContain('TIP WHOLE');
  });

  it('tells when and by whom a bag was tipped already', async () => {
    const bag = await aReleasedBag(house, plant);
    expect((await at.send(`${line}/tips`, { bag: bag.number, isOff: 'true' })).status).toBe(303);
    house.clock.pass(2);
    const text = await scanned(bag.number);
    for (const part of ['TIPPED ALREADY', 'A. Lead', '07:00']) expect(text).toContain(part);
  });

  it('offers to weigh a hanging bag back', async () => {
    const bag = await aReleasedBag(house, plant);
    const hung = await at.send(`${line}/tips`, { bag: bag.number });
    expect(hung.headers['location']).toMatch(/\/off\//);
    house.clock.pass(2);
    expect(await scanned(bag.number)).toContain('WEIGH BACK');
    const rest = { grossGrams: '301.8', tareGrams: '1.8', scaleId: plant.scaleId };
    expect((await at.send(String(hung.headers['location']), rest)).status).toBe(303);
    expect(await scanned(bag.number)).toContain('300 kg');
  });

  it('explains what is no bag', async () => {
    expect(await scanned('LANE-1')).toContain('Store place LANE-1');
    expect(await scanned('UNDO LAST')).toContain('UNDO MY LAST');
    expect(await scanned('rubbish!')).toContain('UNKNOWN');
  });
});

describe('a refused bag that is in already', () => {
  async function refusedBag(): Promise<string> {
    const bag = await aReleasedBag(house, plant, { gradeId: plant.otherGradeId });
    await aTippedBag(house, plant);
    await aStartedRun(house, plant);
    return bag.number;
  }

  async function goOnFrom(bag: string): Promise<void> {
    const onward = await at.send(`${line}/refusals`, { bag });
    expect([onward.status, onward.headers['location']]).toEqual([303, `${line}/already-in?bag=${bag}`]);
  }

  async function refusalsMet(): Promise<number> {
    const rows = await readerOf(house).sql<{ id: string }>`SELECT "id" FROM "refusal_met"`;
    return rows.length;
  }

  it('is remembered once when the person goes on from the refusal, and not by looking', async () => {
    const bag = await refusedBag();
    const before = await refusalsMet();
    await scanned(bag);
    await scanned(bag);
    await at.get(`${line}/already-in?bag=${bag}`);
    expect(await refusalsMet()).toBe(before);
    expect((await at.send(`${line}/already-in`, { bag, isOff: 'true', alreadyIn: 'true' })).status).toBe(409);
    await goOnFrom(bag);
    await goOnFrom(bag);
    expect(await refusalsMet()).toBe(before + 1);
  });

  it('is offered like any bag where it is not refused any more, and nothing is remembered', async () => {
    await aStartedRun(house, plant);
    const before = await refusalsMet();
    const bag = await aReleasedBag(house, plant);
    const onward = await at.send(`${line}/refusals`, { bag: bag.number });
    expect(onward.headers['location']).toBe(`${line}?scan=${bag.number}`);
    expect(await refusalsMet()).toBe(before);
  });

  it('is recorded as it happened and listed for quality under the person', async () => {
    const bag = await refusedBag();
    expect(await scanned(bag)).toContain('ALREADY IN');
    await goOnFrom(bag);
    const sent = await at.send(`${line}/already-in`, { bag, isOff: 'true', alreadyIn: 'true' });
    expect(sent.status).toBe(303);
    const points = await openPointsOf(readerOf(house), plant.siteId, { state: 'open', limit: 50 });
    const listed = points.find(({ cause }) => cause === 'already-in');
    expect([listed?.personId, listed?.role]).toEqual([lead.personId, 'quality-officer']);
  });

  it('is refused half an hour later, and where the person was never refused', async () => {
    const bag = await refusedBag();
    const before = await at.send(`${line}/already-in`, { bag, isOff: 'true', alreadyIn: 'true' });
    expect([before.status, textOf(before.text)]).toEqual([409, expect.stringContaining('was not refused to you here')]);
    await goOnFrom(bag);
    house.clock.pass(31);
    expect((await at.send(`${line}/already-in`, { bag, isOff: 'true', alreadyIn: 'true' })).status).toBe(409);
  });
});

describe('a full pallet', () => {
  async function aRunWithCode(): Promise<string> {
    await aTippedBag(house, plant);
    const run = await aStartedRun(house, plant);
    await house.get(ChangeCode).execute(asking(plant.actor), run.id, { code: 'L6071A1', packCount: 0 });
    house.clock.pass(20);
    return run.number;
  }

  async function built(run: string): Promise<{ path: string; sscc: string }> {
    const answer = await at.send(`${line}/pallets`, { run });
    expect(answer.status).toBe(303);
    const path = String(answer.headers['location']);
    const sscc = /\d{18}/.exec((await at.get(path)).text)?.[0] ?? '';
    return { path, sscc };
  }

  it('gets its label, which is an open point until it is scanned back', async () => {
    const { path, sscc } = await built(await aRunWithCode());
    expect(await pointCauses()).toContain('label-not-scanned-back');
    expect(textOf((await at.get(line)).text)).toContain(`label of pallet ${sscc}`);
    expect((await at.send(path, { label: `(00)${sscc}` })).status).toBe(303);
    expect(await pointCauses()).not.toContain('label-not-scanned-back');
  });

  it('refuses the label of another pallet and names both; the swap is put right with both records kept', async () => {
    const run = await aRunWithCode();
    const [one, other] = [await built(run), await built(run)];
    const refused = await at.send(one.path, { label: other.sscc });
    expect(refused.status).toBe(409);
    for (const sscc of [one.sscc, other.sscc]) expect(textOf(refused.text)).toContain(sscc);
    const wrongPack = await at.send(one.path, { label: one.sscc, packCode: 'L9999' });
    expect([wrongPack.status, textOf(wrongPack.text)]).toEqual([
      409,
      expect.stringContaining('is of no lot on pallet'),
    ]);
    const reason = 'put on the wrong way round';
    const swap = { one: one.sscc, other: other.sscc, reason };
    const shown = await at.send(`${line}/swap`, swap);
    expect([shown.status, textOf(shown.text)]).toEqual([200, expect.stringContaining('pallets: 2')]);
    const previewed = /name="previewed" value="([0-9a-f.]+)"/.exec(shown.text)?.[1] ?? '';
    expect((await at.send(`${line}/swap`, { ...swap, previewed })).status).toBe(303);
    const rows = await readerOf(house).sql<{ sscc: string; fromCount: number; isVoid: number }>`
      SELECT p."sscc", c."from_count" AS "fromCount", CASE WHEN c."voided_by" IS NULL THEN 0 ELSE 1 END AS "isVoid"
      FROM "pallet_content" c JOIN "pallet" p ON p."id" = c."pallet_id" ORDER BY p."sscc", 3`;
    expect(rows.map(({ fromCount, isVoid }) => [fromCount, isVoid])).toEqual([
      [100, 0],
      [0, 1],
      [0, 0],
      [100, 1],
    ]);
  });
});

describe('a stop', () => {
  it('takes one touch, its reason comes later, and one touch ends it', async () => {
    await aTippedBag(house, plant);
    const run = await aStartedRun(house, plant);
    house.clock.pass(5);
    const stopped = await at.send(`${line}/stops`, { run: run.number, stopReason: 'not-said' });
    expect(stopped.status).toBe(303);
    expect(textOf((await at.get(line)).text)).toContain('nobody has said why');
    const said = await at.send(`${String(stopped.headers['location'])}/reason`, { stopReason: 'jam' });
    expect(said.status).toBe(303);
    house.clock.pass(7);
    expect((await at.send(`${String(said.headers['location'])}/again`, {})).status).toBe(303);
    expect(textOf((await at.get(line)).text)).not.toContain('nobody has said why');
  });
});
