import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Response } from 'supertest';
import { journalPage } from '../../journal/journal-entries.js';
import { openPointsOf } from '../../open-points/open-points.js';
import { ChangeCode } from '../../packing/change-code.js';
import { removalsOfHopper, stopsOf } from '../../packing/packing-runs.js';
import { Papers } from '../../platform/printing/papers.js';
import { draftAccount } from '../../reconciliation/draft-account.js';
import { tipsOfBag } from '../../hopper/tips.js';
import { readerOf } from '../../../test/support/a-bag.js';
import { aPerson, signedIn, type SignedInPerson, type TestPerson } from '../../../test/support/a-person.js';
import { aPlant, type Plant } from '../../../test/support/a-plant.js';
import { aReleasedBag, aStartedRun, aTippedBag, jobsDone } from '../../../test/support/a-tip.js';
import { asking, openHouse, type TestHouse } from '../../../test/support/house.js';
import { pageCount, symbolsOf, textOf as textOfPdf } from '../../../test/support/read-pdf.js';
import { formKinds, rowCounts, type FormKind } from './form-kinds.js';
import { findPaperForm, paperFormPage, type PaperForm } from './paper-forms.js';

/** The words of a page. Versions of the date formats differ by a comma after the weekday. */
const textOf = (html: string): string =>
  html
    .replaceAll(/<[^>]+>/g, ' ')
    .replaceAll(/\s+/g, ' ')
    .replaceAll(/(Thu|Fri),/g, '$1');

let house: TestHouse;
let plant: Plant;
let lead: TestPerson;
let writer: TestPerson;
let me: SignedInPerson;

async function openNight(): Promise<void> {
  house = await openHouse();
  plant = await aPlant(house, { packsPerPallet: 20 });
  lead = await aPerson(house, plant.siteId, { name: 'A. Lead' });
  writer = await aPerson(house, plant.siteId, { name: 'N. Writer' });
  me = await signedIn(house, lead);
}

/** Prints sheets of these kinds for the first line. */
async function print(by: SignedInPerson, ...kinds: readonly FormKind[]): Promise<readonly PaperForm[]> {
  const [first = '', ...rest] = kinds;
  expect(rest).toEqual([]);
  const answer = await by.send('/paper-forms', { lineId: plant.lineIds[0], kinds: first });
  expect([answer.status, answer.headers['location']]).toEqual([303, '/paper-forms']);
  return paperFormPage(readerOf(house), plant.siteId, { before: null, limit: 50 });
}

async function printOne(kind: FormKind, by = me): Promise<PaperForm> {
  const [form] = await print(by, kind);
  if (form?.facts.kind !== kind) throw new Error(`no sheet of ${kind}`);
  return form;
}

const sheetOf = (form: PaperForm): Promise<PaperForm> =>
  findPaperForm(readerOf(house), plant.siteId, form.facts.number);

/** Keys a row in; 303 leads on to the next. */
function keyIn(
  form: PaperForm,
  row: number,
  fields: Readonly<Record<string, string>>,
  { as = form.facts.kind, key }: { readonly as?: string; readonly key?: string } = {},
) {
  const path = `/paper-forms/${form.facts.number}/rows/${row}/${as}`;
  const writtenBy = isRow(as) ? { writtenBy: writer.personId } : {};
  return me.send(path, { ...writtenBy, ...fields }, key);
}

/** Ends and strikes say nothing of who wrote the row. */
const isRow = (as: string): boolean => (formKinds as readonly string[]).includes(as);

const refusal = (answer: Response): string => textOf(answer.text.split('role="alert"')[1]?.split('</div>')[0] ?? '');

describe('a sheet printed ahead', () => {
  beforeAll(openNight);
  afterAll(() => house.close());

  const pdfOf = async (form: PaperForm): Promise<Buffer> => (await house.get(Papers).fileOf(form.id)).bytes;

  it.each(['tips', 'stops', 'counts', 'removals'] as const)(
    'of %s has a number, a code of its own that can be scanned, and numbered rows, on one page',
    async (kind) => {
      const form = await printOne(kind);
      const pdf = await pdfOf(form);
      expect(pageCount(pdf)).toBe(1);
      expect((await symbolsOf(pdf)).map(({ text }) => text)).toEqual([form.facts.number]);
      const words = textOfPdf(pdf);
      expect(words).toContain(form.facts.number);
      expect(words).toContain('CAUTION');
      for (let row = 1; row <= rowCounts[kind]; row += 1) expect(words.split('\n')).toContain(String(row));
    },
  );

  it('of pallets sets a number aside for each row, in text and as a symbol, and prints a card for each', async () => {
    const form = await printOne('pallets');
    const { ssccs, number } = form.facts;
    expect(new Set(ssccs).size).toBe(rowCounts.pallets);
    const pdf = await pdfOf(form);
    const read = (await symbolsOf(pdf)).map(({ text }) => text);
    expect(pageCount(pdf)).toBe(1 + ssccs.length / 4);
    // Once in its row, once on its card.
    for (const sscc of ssccs) expect(read.filter((text) => text.includes(`00${sscc}`))).toHaveLength(2);
    expect(read).toContain(number);
    const blocks: unknown[] = await house.databases.reader.query(
      `SELECT "id" FROM "sscc_block" WHERE "sheet" = '${number}' AND "device_id" IS NULL`,
    );
    expect(blocks).toHaveLength(1);
  });

  it('speaks the language of who had it printed, and keeps its bytes', async () => {
    const ana = await aPerson(house, plant.siteId, { language: 'es' });
    const form = await printOne('tips', await signedIn(house, ana));
    const pdf = await pdfOf(form);
    expect(textOfPdf(pdf)).toContain('BIG BAGS VACIADOS');
    expect((await pdfOf(form)).equals(pdf)).toBe(true);
  });

  it('is found by its code in the search box and at the line, a pallet number leads to its row', async () => {
    const { facts } = await printOne('pallets');
    const page = `/paper-forms/${facts.number}`;
    const found = await me.get(`/thread?code=${facts.number.toLowerCase()}`);
    expect([found.status, found.headers['location']]).toEqual([303, page]);
    const third = facts.ssccs[2] ?? '';
    expect((await me.get(`/thread?code=]d200${third}`)).headers['location']).toBe(`${page}?row=3`);
    const atLine = await me.get(`/line/${plant.lineIds[0]}?scan=${facts.number}`);
    expect(atLine.text).toContain(`href="${page}"`);
    expect((await me.get('/thread?code=PF-2026-999999')).status).toBe(200);
  });

  it('is printed by a lead or by quality, and read by everybody', async () => {
    const loader = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['loader'] }));
    const asked = { lineId: plant.lineIds[0], kinds: 'tips' };
    expect((await loader.send('/paper-forms', asked)).status).toBe(403);
    expect((await loader.get('/paper-forms')).status).toBe(200);
    const quality = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['quality-officer'] }));
    expect((await quality.send('/paper-forms', asked)).status).toBe(303);
    const form = await printOne('tips');
    expect((await quality.get(`/paper-forms/${form.facts.number}`)).text).not.toContain('name="bag"');
    const path = `/paper-forms/${form.facts.number}/rows/1/tips`;
    expect((await quality.send(path, { time: '22:10', bag: 'B0000019', writtenBy: lead.personId })).status).toBe(403);
  });
});

describe('a night on paper', () => {
  const forms = new Map<FormKind, PaperForm>();
  const bags: { id: string; number: string }[] = [];
  const form = (kind: FormKind): PaperForm => {
    const found = forms.get(kind);
    if (found === undefined) throw new Error(`no sheet of ${kind}`);
    return found;
  };
  let run: { id: string; number: string };
  /** What was open before the night. */
  let causesBefore: readonly string[];
  const causesNow = async (): Promise<readonly string[]> =>
    (await openPointsOf(readerOf(house), plant.siteId, { state: 'open', limit: 50 })).map(({ cause }) => cause);

  beforeAll(async () => {
    await openNight();
    house.clock.set('2026-03-12T20:00:00.000Z');
    me = await signedIn(house, lead);
    await aTippedBag(house, plant, { netGrams: 1_000_000 });
    run = await aStartedRun(house, plant);
    await house.get(ChangeCode).execute(asking(plant.actor), run.id, { code: 'L6071A3', packCount: 0 });
    for (let count = 0; count < 3; count += 1) bags.push(await aReleasedBag(house, plant));
    // Nobody planned checks here: see paper-checks.spec.ts.
    for (const kind of formKinds.filter((one) => one !== 'checks')) forms.set(kind, await printOne(kind));
    await jobsDone(house);
    causesBefore = await causesNow();
    // The server is dead from half past nine in the evening until a quarter to seven, by the plant's clock.
    house.clock.set('2026-03-13T05:45:00.000Z');
    me = await signedIn(house, lead);
  });
  afterAll(() => house.close());

  const local = (clock: string): string =>
    clock > '06:45' ? `2026-03-12T${minusOne(clock)}` : `2026-03-13T${minusOne(clock)}`;
  /** The plant is an hour ahead of UTC in March; the tests know no time before one o'clock. */
  const minusOne = (clock: string): string =>
    `${String(Number(clock.slice(0, 2)) - 1).padStart(2, '0')}:${clock.slice(3)}:00.000Z`;

  it('is keyed in in any order, over midnight, with the written times', async () => {
    const tips = form('tips');
    // The last row first: it is of this morning, by the clock alone.
    const last = await keyIn(tips, 3, { time: '05:10', bag: bags[2]!.number, offTime: '0520' });
    expect([last.status, last.headers['location']]).toEqual([303, `/paper-forms/${tips.facts.number}?row=4#row`]);
    expect((await keyIn(tips, 1, { time: '22.40', bag: bags[0]!.number })).status).toBe(303);
    const part = { grossGrams: '301,8', tareGrams: '1,8', scaleId: plant.scaleId, offTime: '1:35' };
    expect((await keyIn(tips, 2, { time: '1:20', bag: bags[1]!.number, ...part })).status).toBe(303);
    const tipped = await Promise.all(bags.map(async ({ id }) => (await tipsOfBag(readerOf(house), id))[0]));
    expect(tipped.map((tip) => [tip?.openedAt, tip?.offAt, tip?.restGrams])).toEqual([
      [local('22:40'), local('22:40'), 0],
      [local('01:20'), local('01:35'), 300_000],
      [local('05:10'), local('05:20'), 0],
    ]);
  });

  it('keys in counts, stops, removals and pallets by the same commands', async () => {
    const counts = form('counts');
    expect((await keyIn(counts, 2, { time: '05:30', packCount: '60', loosePackCount: '20' })).status).toBe(303);
    expect((await keyIn(counts, 1, { time: '23:00', packCount: '20' })).status).toBe(303);
    const stops = form('stops');
    expect((await keyIn(stops, 1, { time: '23:10', stopReason: 'jam', againTime: '23:25' })).status).toBe(303);
    const removals = form('removals');
    const swept = { kind: 'sweepings', netGrams: '4,5', scaleId: plant.scaleId, removalReason: 'floor', fate: 'waste' };
    expect((await keyIn(removals, 1, { time: '05:35', ...swept })).status).toBe(303);
    const pallets = form('pallets');
    const [first = '', second = ''] = pallets.facts.ssccs;
    expect((await keyIn(pallets, 1, { time: '23:02', packCount: '20', sscc: first })).status).toBe(303);
    expect((await keyIn(pallets, 2, { time: '05:31', packCount: '20', sscc: `(00)${second}` })).status).toBe(303);
    const reader = readerOf(house);
    expect(await stopsOf(reader, [run.id])).toMatchObject([
      { reason: 'jam', stoppedAt: local('23:10'), startedAgainAt: local('23:25') },
    ]);
    const removed = await removalsOfHopper(
      reader,
      plant.hopperId,
      '2026-03-12T00:00:00.000Z',
      '2026-03-14T00:00:00.000Z',
    );
    expect(removed).toMatchObject([{ kind: 'sweepings', grams: 4_500, removedAt: local('05:35') }]);
  });

  it('leaves a journal that says paper, sheet and row, who wrote and who keyed in', async () => {
    const entries = await journalPage(readerOf(house), plant.siteId, { before: null, limit: 50 });
    const tips = entries.filter(({ action }) => action === 'tip-bag' || action === 'end-tip');
    const number = form('tips').facts.number;
    expect(tips.filter(({ reason }) => reason?.startsWith(`written on paper: ${number}, row`))).toHaveLength(4);
    expect(
      new Set(tips.filter(({ reason }) => reason !== null && reason.includes(number)).map((one) => one.personId)),
    ).toEqual(new Set([lead.personId]));
    const { rows } = await sheetOf(form('tips'));
    expect(rows[1]?.entries).toMatchObject([
      { action: 'tip-bag', happenedAt: local('01:20'), writtenBy: writer.personId, keyedBy: lead.personId },
      { action: 'end-tip', happenedAt: local('01:35'), writtenBy: writer.personId },
    ]);
    const page = textOf((await me.get(`/paper-forms/${number}`)).text);
    expect(page).toContain('written by N. Writer, keyed in by A. Lead');
    expect(page).toContain('Fri 13 Mar 2026, 01:20');
  });

  it('gives the account of the night its written times, and blames nobody for being late', async () => {
    await jobsDone(house);
    const reader = readerOf(house);
    const span = { hopperId: plant.hopperId, fromAt: local('22:00'), untilAt: local('06:00') };
    const { lines } = await draftAccount(reader, plant.siteId, span);
    const bagLines = lines.filter(({ kind }) => kind === 'bag-tipped').map(({ code, at, grams }) => [code, at, grams]);
    for (const [place, at] of [local('22:40'), local('01:20'), local('05:10')].entries()) {
      expect(bagLines).toContainEqual([bags[place]!.number, at, 1_000_000]);
    }
    expect(await causesNow()).toEqual(causesBefore);
    const query = `hopper=${span.hopperId}&fromAt=${span.fromAt}&untilAt=${span.untilAt}`;
    const draft = await me.get(`/api/accounts/draft?${query}`);
    const { contentHash: seenHash } = draft.body as { contentHash: string };
    const { hopperId: hopper, fromAt, untilAt } = span;
    const signed = await me.post('/api/accounts', { hopper, fromAt, untilAt, seenHash, statedLoss: 'test' });
    const { text } = await me.get(`/accounts/${(signed.body as { id: string }).id}`);
    const rows = text.split('<tr').filter((row) => row.includes('Paper: '));
    expect(rows.filter((row) => row.includes('Paper: written by hand')).map((row) => textOf(row))).toEqual([
      ...bags.slice(0, 3).map(({ number }) => expect.stringContaining(number) as unknown),
      expect.stringContaining('Sweepings'),
      expect.stringContaining(bags[1]!.number),
    ]);
    expect(rows.filter((row) => row.includes('Paper: packs were counted'))).toHaveLength(1);
  });

  it('refuses a row that was keyed in, and says what is there', async () => {
    const again = await keyIn(form('tips'), 1, { time: '22:41', bag: bags[0]!.number });
    expect(again.status).toBe(409);
    expect(refusal(again)).toContain('Row 1');
    expect(refusal(again)).toContain('bag tipped, Thu 12 Mar 2026, 22:40');
    const counted = await keyIn(form('counts'), 1, { time: '23:00', packCount: '20', loosePackCount: '1' });
    expect([counted.status, refusal(counted)]).toEqual([409, expect.stringContaining('packs counted')]);
  });

  it('takes the same form twice as once', async () => {
    const bag = await aReleasedBag(house, plant);
    const fields = { time: '04:00', bag: bag.number };
    for (const turn of [1, 2]) {
      const answer = await keyIn(form('tips'), 5, fields, { key: 'the-same-key-twice-1' });
      expect([turn, answer.status]).toEqual([turn, 303]);
    }
    expect(await tipsOfBag(readerOf(house), bag.id)).toHaveLength(1);
  });

  it('refuses a pallet number of another sheet, one that is used, and one that was struck', async () => {
    const pallets = form('pallets');
    const other = await printOne('pallets');
    const at = { time: '05:40', packCount: '20' };
    const foreign = await keyIn(pallets, 3, { ...at, sscc: other.facts.ssccs[0] ?? '' });
    expect([foreign.status, refusal(foreign)]).toEqual([409, expect.stringContaining('another device or sheet')]);
    const used = await keyIn(pallets, 3, { ...at, sscc: pallets.facts.ssccs[0] ?? '' });
    expect([used.status, refusal(used)]).toEqual([409, expect.stringContaining('is a pallet’s already')]);
    const spoilt = { reason: 'the card was spoilt' };
    expect((await keyIn(pallets, 4, spoilt, { as: 'strike' })).status).toBe(303);
    const struck = await keyIn(pallets, 3, { ...at, sscc: pallets.facts.ssccs[3] ?? '' });
    expect([struck.status, refusal(struck)]).toEqual([409, expect.stringContaining('was struck with row 4')]);
    const row = await keyIn(pallets, 4, { ...at, sscc: pallets.facts.ssccs[3] ?? '' });
    expect([row.status, refusal(row)]).toEqual([409, expect.stringContaining('row of a paper form struck')]);
    const again = await keyIn(pallets, 1, spoilt, { as: 'strike' });
    expect([again.status, refusal(again)]).toEqual([409, expect.stringContaining('pallet built')]);
  });

  it('takes back a strike with a reason: the row is blank again, both entries stay in the journal', async () => {
    const pallets = form('pallets');
    const page = `/paper-forms/${pallets.facts.number}`;
    expect((await me.get(page)).text).toContain(`action="${page}/rows/4/take-back"`);
    const takeBack = (row: number, reason: string, by = me) => by.send(`${page}/rows/${row}/take-back`, { reason });
    const loader = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['loader'] }));
    expect((await takeBack(4, 'the card was good', loader)).status).toBe(403);
    expect((await takeBack(4, '')).status).toBe(422);
    const [taken, twice] = await Promise.all([takeBack(4, 'the card was good'), takeBack(4, 'the card was good')]);
    expect([taken.status, twice.status].sort()).toEqual([303, 409]);
    expect((await sheetOf(pallets)).rows[3]).toMatchObject({ state: 'blank', entries: [] });
    const [first] = await journalPage(readerOf(house), plant.siteId, { before: null, limit: 1 });
    expect(first).toMatchObject({ action: 'take-back-strike', reason: 'the card was good' });
    const keyed = await takeBack(1, 'test');
    expect([keyed.status, refusal(keyed)]).toEqual([409, expect.stringContaining('is not struck')]);
  });

  it('keeps a row as it is written where the records contradict it, once somebody has seen why, and asks who knows', async () => {
    const tips = form('tips');
    const fields = { time: '05:15', bag: bags[0]!.number };
    const refused = await keyIn(tips, 8, fields);
    expect([refused.status, refused.text]).toEqual([409, expect.stringContaining('name="keep" value="as-written"')]);
    const kept = await keyIn(tips, 8, { ...fields, keep: 'as-written' });
    expect([kept.status, kept.headers['location']]).toEqual([303, `/paper-forms/${tips.facts.number}?row=9#row`]);
    expect(await causesNow()).toContain('entry-kept-paper');
    const row = (await sheetOf(tips)).rows[7];
    expect(row).toMatchObject({ state: 'blank', entries: [], keptIds: [expect.any(String)] });
    const link = `/kept-entries/${row?.keptIds[0] ?? ''}`;
    expect((await me.get(`/paper-forms/${tips.facts.number}`)).text).toContain(`href="${link}"`);
    const shown = textOf((await me.get(link)).text);
    for (const part of ['A tip', `from sheet ${tips.facts.number}, row 8`, 'N. Writer', bags[0]!.number]) {
      expect(shown).toContain(part);
    }
    expect(shown).not.toContain('as-written');
    // A bag that nobody knows is kept, too; a row that was keyed in has nothing to keep.
    const unknown = { time: '05:16', bag: 'B9999992' };
    expect((await keyIn(tips, 9, unknown)).text).toContain('value="as-written"');
    expect((await keyIn(tips, 9, { ...unknown, keep: 'as-written' })).status).toBe(303);
    const again = await keyIn(tips, 1, { ...fields, keep: 'as-written' });
    expect([again.status, again.text]).toEqual([409, expect.not.stringContaining('value="as-written"')]);
    expect((await keyIn(tips, 8, { reason: 'it was row 1' }, { as: 'strike' })).status).toBe(303);
  });

  it('waits for the end of a bag that hangs, and takes it from the same row', async () => {
    const bag = await aReleasedBag(house, plant);
    const tips = form('tips');
    const tooMuch = { grossGrams: '1900', tareGrams: '1,8', scaleId: plant.scaleId, offTime: '04:50' };
    const refused = await keyIn(tips, 6, { time: '04:40', bag: bag.number, ...tooMuch });
    expect(refused.status).toBe(409);
    expect(textOf(refused.text)).toContain('By the records the bag still hangs');
    expect((await sheetOf(tips)).rows[5]).toMatchObject({ state: 'begun', openEnd: { of: 'tip' } });
    const half = await keyIn(tips, 6, { offTime: '04:50', grossGrams: '300' }, { as: 'tip-end' });
    expect(half.status).toBe(422);
    const end = { offTime: '04:50', grossGrams: '300', tareGrams: '2', scaleId: plant.scaleId };
    expect((await keyIn(tips, 6, end, { as: 'tip-end' })).status).toBe(303);
    expect((await sheetOf(tips)).rows[5]).toMatchObject({ state: 'keyed', openEnd: null });
    expect((await keyIn(tips, 6, end, { as: 'tip-end' })).status).toBe(409);
  });

  it('asks for what cannot be: a time ahead, a day of the future, nobody’s hand, half a weighing', async () => {
    const tips = form('tips');
    const bag = await aReleasedBag(house, plant);
    const ahead = await keyIn(tips, 7, { time: '08:00', day: '2026-03-13', bag: bag.number });
    expect([ahead.status, refusal(ahead)]).toEqual([422, expect.stringContaining('has not come yet')]);
    expect((await keyIn(tips, 7, { time: '25:00', bag: bag.number })).status).toBe(422);
    expect((await keyIn(tips, 7, { time: '04:00', bag: bag.number, grossGrams: '300' })).status).toBe(422);
    expect((await keyIn(tips, 7, { time: '04:00', bag: bag.number, writtenBy: plant.siteId })).status).toBe(404);
    expect((await keyIn(tips, 99, { time: '04:00', bag: bag.number })).status).toBe(409);
    expect((await keyIn(tips, 1, { time: '04:00', stopReason: 'jam' }, { as: 'stops' })).status).toBe(409);
    expect(await tipsOfBag(readerOf(house), bag.id)).toEqual([]);
    const unknown = await keyIn(tips, 7, { time: '04:05', day: '2026-03-13', bag: bag.number, writtenBy: 'not-known' });
    expect(unknown.status).toBe(303);
    expect((await sheetOf(tips)).rows[6]?.entries).toMatchObject([{ writtenBy: 'not-known' }]);
  });

  it('gives one of two entries that are keyed in from one row at the same moment', async () => {
    const counts = form('counts');
    const answers = await Promise.all([
      keyIn(counts, 3, { time: '05:32', packCount: '60' }),
      keyIn(counts, 3, { time: '05:32', packCount: '60', loosePackCount: '20' }),
      keyIn(counts, 3, { reason: 'nothing was written' }, { as: 'strike' }),
    ]);
    expect(answers.map(({ status }) => status).sort()).toEqual([303, 409, 409]);
    expect((await sheetOf(counts)).rows[2]?.entries).toHaveLength(1);
  });

  it('is closed when every row is keyed in or struck, so that each number set aside is accounted for', async () => {
    const pallets = form('pallets');
    const answer = await me.send(`/paper-forms/${pallets.facts.number}/strikes`, {
      reason: 'nothing was written on it',
    });
    expect(answer.status).toBe(303);
    const { rows } = await sheetOf(pallets);
    expect(rows.map(({ state }) => state)).toEqual(['keyed', 'keyed', ...Array<string>(10).fill('struck')]);
    expect(textOf((await me.get(`/paper-forms/${pallets.facts.number}`)).text)).toContain(
      'Closed: 2 keyed in, 10 struck, none is blank.',
    );
    const late = await keyIn(pallets, 5, { time: '05:41', packCount: '20', sscc: pallets.facts.ssccs[4] ?? '' });
    expect(late.status).toBe(409);
  });
});
