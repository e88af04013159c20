import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { aPackWeigher } from '../../../test/support/a-pack-weigher.js';
import { aPerson, signedIn, type SignedInPerson, type TestPerson } from '../../../test/support/a-person.js';
import { aPlant, type Plant } from '../../../test/support/a-plant.js';
import { aRun } from '../../../test/support/a-run.js';
import { asking, openHouse, type TestHouse } from '../../../test/support/house.js';
import { filledPacks, keepPacks } from '../../../test/support/kept-packs.js';
import { pageText } from '../../../test/support/page-text.js';
import { textOf } from '../../../test/support/read-pdf.js';
import { CloseRun } from '../../packing/close-run.js';
import { shifted } from '../../platform/clock.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { ChangeSetting } from './change-setting.js';
import { CorrectSetting } from './correct-setting.js';
import { settingAt, settingsOfLine, type LineSettingRow } from './line-settings.js';

const startedAt = '2026-03-12T06:00:00.000Z';
const hour = 3_600_000;

interface Listed {
  readonly items: readonly LineSettingRow[];
}

describe('what a line is set to', () => {
  let house: TestHouse;
  let from: ReadFrom;
  let plant: Plant;
  let person: TestPerson;
  let lead: SignedInPerson;
  let auditor: SignedInPerson;

  beforeAll(async () => {
    house = await openHouse();
    from = house.app.get<ReadFrom>(READER, { strict: false });
    house.clock.set(startedAt);
    plant = await aPlant(house);
    person = await aPerson(house, plant.siteId, { roles: ['line-lead'], name: 'Ruth' });
    lead = await signedIn(house, person);
    auditor = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['auditor'] }));
  });
  afterAll(() => house.close());

  const set = (form: object, line: 0 | 1 = 0) => lead.post(`/api/lines/${plant.lineIds[line]}/settings`, form);
  const listed = async (line: 0 | 1 = 0): Promise<Listed['items']> =>
    ((await auditor.get(`/api/lines/${plant.lineIds[line]}/settings`)).body as Listed).items;
  const inForce = (at: string, formatId = plant.formatId, line: 0 | 1 = 0) =>
    settingAt(from, { lineId: plant.lineIds[line], formatId }, at);

  it('is recorded with its time, reason and who, for the format that runs; each figure holds until it is set otherwise', async () => {
    const refused = await set({ setpointGrams: '2005', reason: 'New film' });
    expect(refused).toMatchObject({ status: 409, body: { type: 'problem:setting-needs-format' } });
    await aRun(house, plant, { startedAt });
    house.clock.set(shifted(startedAt, hour));
    const first = await set({ setpointGrams: '2005,5', rejectBelowGrams: '1970', reason: 'Mean 2 g low' });
    expect(first).toMatchObject({
      status: 201,
      body: {
        ...{ formatId: plant.formatId, setpointMilligrams: 2_005_500, rejectBelowMilligrams: 1_970_000 },
        ...{ rejectAboveMilligrams: null, changedAt: shifted(startedAt, hour) },
      },
    });
    house.clock.set(shifted(startedAt, 2 * hour));
    await set({ rejectAboveGrams: '2040', reason: 'Customer asks', changedAt: shifted(startedAt, 1.5 * hour) });
    expect((await listed()).map(({ why, setBy }) => [why, setBy])).toEqual([
      ['Customer asks', person.personId],
      ['Mean 2 g low', person.personId],
    ]);
    expect(await inForce(shifted(startedAt, hour - 1))).toEqual({
      setpoint: null,
      rejectBelow: null,
      rejectAbove: null,
    });
    expect(await inForce(shifted(startedAt, hour))).toMatchObject({ setpoint: { milligrams: 2_005_500 } });
    expect(await inForce(house.clock.now())).toMatchObject({
      ...{ setpoint: { milligrams: 2_005_500, why: 'Mean 2 g low' }, rejectBelow: { milligrams: 1_970_000 } },
      rejectAbove: { milligrams: 2_040_000, changedAt: shifted(startedAt, 1.5 * hour) },
    });
    expect(await inForce(house.clock.now(), plant.otherFormatId)).toMatchObject({ setpoint: null });
    expect(await inForce(house.clock.now(), plant.formatId, 1)).toMatchObject({ setpoint: null });
  });

  it.each([
    [{}, 'setting-without-figure'],
    [{ setpointGrams: '2.005' }, 'setting-in-other-unit'],
    [{ setpointGrams: '1500' }, 'setting-far-from-nominal'],
    [{ rejectBelowGrams: '2040', rejectAboveGrams: '1970' }, 'setting-limits-crossed'],
    [{ setpointGrams: '2005', changedAt: shifted(startedAt, 3 * hour) }, 'time-ahead'],
    [{ setpointGrams: '2005', changedAt: shifted(startedAt, -71 * hour) }, 'time-too-far-back'],
  ])('is refused plainly: %j', async (form, code) => {
    const before = await listed();
    const answer = await set({ reason: 'A try', ...form });
    expect([answer.status, (answer.body as { type: string }).type]).toEqual([409, `problem:${code}`]);
    expect((answer.body as { detail: string }).detail).not.toMatch(/\{|undefined/);
    expect(await listed()).toEqual(before);
  });

  it('needs a reason, and somebody who runs the line; another site does not see it', async () => {
    expect((await set({ setpointGrams: '2005' })).status).toBe(422);
    const path = `/api/lines/${plant.lineIds[0]}/settings`;
    expect((await auditor.post(path, { setpointGrams: '2005', reason: 'A try' })).status).toBe(403);
    const other = await aPlant(house, { siteCode: 'OTHER' });
    const stranger = await signedIn(house, await aPerson(house, other.siteId));
    expect((await stranger.get(path)).status).toBe(404);
    expect((await stranger.get(`/lines/${plant.lineIds[0]}/settings`)).status).toBe(404);
    const [setting] = await listed();
    const correction = { why: 'did-not-occur', reason: 'A try' };
    expect((await stranger.post(`/api/line-settings/${setting?.id}/correction`, correction)).status).toBe(404);
    expect(await listed()).toHaveLength(2);
  });

  it('is corrected: what is left out stays, and what did not occur is gone; the journal keeps both', async () => {
    const [above, first] = await listed();
    const correct = (id: string | undefined, form: object) => lead.post(`/api/line-settings/${id}/correction`, form);
    const wrong = { why: 'incorrect-data', reason: 'Misread' };
    expect((await correct(first?.id, wrong)).status).toBe(422);
    expect((await correct(first?.id, { ...wrong, why: 'did-not-occur', setpointGrams: '2005' })).status).toBe(422);
    expect(await correct(first?.id, { ...wrong, setpointGrams: '2006' })).toMatchObject({
      body: { setting: { setpointMilligrams: 2_006_000, rejectBelowMilligrams: 1_970_000 } },
    });
    expect(await inForce(shifted(startedAt, hour))).toMatchObject({
      setpoint: { milligrams: 2_006_000, why: 'Mean 2 g low' },
    });
    expect(await correct(first?.id, { ...wrong, setpointGrams: '2007' })).toMatchObject({
      ...{ status: 409, body: { type: 'problem:already-corrected' } },
    });
    const ahead = { ...wrong, changedAt: shifted(house.clock.now(), 1) };
    expect(await correct(above?.id, ahead)).toMatchObject({ body: { type: 'problem:time-ahead' } });
    expect((await correct(above?.id, { why: 'did-not-occur', reason: 'Other line' })).status).toBe(201);
    expect(await inForce(house.clock.now())).toMatchObject({ rejectAbove: null });
    const [entry] = await from.sql<{ before: string; after: string }>`
      SELECT "before", "after" FROM "journal_entry" WHERE "action" = 'correct-setting' ORDER BY "sequence" LIMIT 1`;
    expect(JSON.parse(entry?.before ?? '{}')).toMatchObject({ setpointMilligrams: 2_005_500 });
    expect(JSON.parse(entry?.after ?? '{}')).toMatchObject({ setting: { setpointMilligrams: 2_006_000 } });
  });

  it('is recorded and corrected on its pages, in the plant’s own time', async () => {
    const path = `/lines/${plant.lineIds[0]}/settings`;
    const blank = await lead.get(`${path}?setpointGrams=2006.4&formatId=${plant.formatId}`);
    expect(blank.text).toContain('value="2006.4"');
    expect(pageText(blank.text)).toContain('The advised setpoint is filled in.');
    const sent = await lead.send(path, {
      ...{ formatId: plant.formatId, setpointGrams: '2006.4', rejectBelowGrams: '', rejectAboveGrams: '' },
      ...{ reason: 'As advised', changedAt: '' },
    });
    expect([sent.status, sent.headers['location']]).toEqual([303, path]);
    const wrong = await lead.send(path, { formatId: plant.formatId, setpointGrams: '20', reason: 'As advised' });
    expect(wrong.status).toBe(409);
    expect(pageText(wrong.text)).toContain('Read the machine again');
    const seen = pageText((await auditor.get(path)).text);
    expect(seen).toContain('setpoint 2 006.40 g As advised Ruth');
    expect(seen).not.toContain('Set the machine first');
    const [latest] = await listed();
    const correction = `/line-settings/${latest?.id}/correct`;
    expect(pageText((await lead.get(correction)).text)).toContain('setpoint 2 006.40 g. Why: As advised');
    const right = { why: 'incorrect-data', setpointGrams: '2006.2', reason: 'It shows steps of 0.2 g', changedAt: '' };
    expect((await lead.send(correction, right)).headers['location']).toBe(path);
    expect((await listed())[0]).toMatchObject({ setpointMilligrams: 2_006_200 });
  });

  it('stands under the control chart and in the report of the run, and changes no sum and no verdict', async () => {
    const lineId = plant.lineIds[1];
    const { weigherId } = await aPackWeigher(house, plant, { lineId });
    const begin = house.clock.now();
    const setting = { formatId: plant.formatId, setpointGrams: '2004', reason: 'Before the run' };
    await set({ ...setting, changedAt: shifted(begin, -hour / 2) }, 1);
    await set({ formatId: plant.formatId, rejectBelowGrams: '1971', reason: 'At the very start', changedAt: begin }, 1);
    const { runId } = await aRun(house, plant, { lineId, startedAt: begin });
    const filled = { packCount: 1200, firstAt: begin, everyMilliseconds: 3000, heads: 1, deviationMilligrams: 3000 };
    const columns = filledPacks({ ...filled, meanOf: () => 2_005_000 });
    await keepPacks(house, { runId, weigherId, nominalMilligrams: 2_000_000 }, columns);
    house.clock.set(shifted(begin, hour));
    const told = async () => {
      const { events, ...rest } = (await auditor.get(`/api/runs/${runId}/weights`)).body as {
        events: readonly { text: string }[];
      };
      return { texts: events.map(({ text }) => text), rest };
    };
    const before = await told();
    await set({ setpointGrams: '2003', reason: 'Mean high', changedAt: shifted(begin, hour / 2) }, 1);
    await set({ formatId: plant.otherFormatId, setpointGrams: '1000', reason: 'For the next run' }, 1);
    const after = await told();
    const atStart = expect.stringMatching(/^Set: pushed out below 1.971\.00 g\. At the very start$/);
    expect(after.texts).toEqual([atStart, expect.stringMatching(/^Set: setpoint 2.003\.00 g\. Mean high$/)]);
    expect([before.texts, after.rest]).toEqual([[atStart], before.rest]);
    expect(pageText((await auditor.get(`/runs/${runId}/weights`)).text)).toContain('Set: setpoint 2 003.00 g.');
    await house.get(CloseRun).execute(asking(plant.actor), runId, { packCount: 1200, loosePackCount: 0 });
    const { paperId } = (await lead.post(`/api/runs/${runId}/weights/report`)).body as { paperId: string };
    const text = textOf((await auditor.get(`/papers/${paperId}/file`).responseType('blob')).body as Buffer).replaceAll(
      /\s+/g,
      ' ',
    );
    expect(text).toMatch(/At the start: setpoint 2.004\.00 g, pushed out below 1.971\.00 g, as last recorded\./);
    expect(text.match(/pushed out below/g)).toHaveLength(1);
    expect(text).toMatch(/setpoint 2.003\.00 g\. Mean high/);
    expect(text).not.toContain('For the next run');
  });

  it('is what was set last and not corrected, whatever was recorded in whatever order', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.record({ minutesAgo: fc.integer({ min: 0, max: 50 }), figure: fc.nat(2), isVoid: fc.boolean() }), {
          ...{ minLength: 1, maxLength: 6 },
        }),
        async (changes) => {
          const own = await aPlant(house, { siteCode: `P${house.clock.now()}${Math.random()}`.slice(0, 36) });
          const now = house.clock.now();
          const names = ['setpointGrams', 'rejectBelowGrams', 'rejectAboveGrams'] as const;
          const good: { at: string; figure: number; milligrams: number }[] = [];
          for (const [place, { minutesAgo, figure, isVoid }] of changes.entries()) {
            const changedAt = shifted(now, -minutesAgo * 60_000);
            const milligrams = 2_000_000 + place * 1000;
            const form = { formatId: own.formatId, changedAt, [names[figure] ?? '']: String(milligrams / 1000) };
            const asked = { ...form, reason: 'Drawn' };
            const { id } = await house.get(ChangeSetting).execute(asking(own.actor), own.lineIds[0], asked);
            const gone = { why: 'did-not-occur', reason: 'Drawn' } as const;
            if (isVoid) await house.get(CorrectSetting).execute(asking(own.actor), id, gone);
            else good.push({ at: changedAt, figure, milligrams });
          }
          const found = await settingAt(from, { lineId: own.lineIds[0], formatId: own.formatId }, now);
          const lastOf = (figure: number) =>
            good
              .filter((one) => one.figure === figure)
              .reduce<(typeof good)[number] | null>(
                (one, other) => (one === null || other.at >= one.at ? other : one),
                null,
              )?.milligrams;
          expect([found.setpoint, found.rejectBelow, found.rejectAbove].map((one) => one?.milligrams)).toEqual(
            [0, 1, 2].map(lastOf),
          );
          expect(await settingsOfLine(from, own.lineIds[0])).toHaveLength(good.length);
        },
      ),
      { numRuns: 15 },
    );
  });
});
