import { afterEach, beforeEach, describe, expect, it } from '@jest/globals';
import { readerOf } from '../../test/support/a-bag.js';
import { aPerson, signedIn, type SignedInPerson } from '../../test/support/a-person.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { packsCounted } from '../../test/support/a-run.js';
import { aProvenEmpty, aReleasedBag, aTippedBag } from '../../test/support/a-tip.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { threePallets } from '../../test/support/three-pallets.js';
import { CorrectWeighing } from '../drying/correct-weighing.js';
import { CorrectEmpty } from '../hopper/correct-empty.js';
import { CorrectTip } from '../hopper/correct-tip.js';
import { currentPeriod } from '../hopper/hopper-period-rows.js';
import { sourcesOfRanges } from '../hopper/hopper-links.js';
import { TipBag } from '../hopper/tip-bag.js';
import type { Asked } from '../journal/entry-draft.js';
import { CorrectCount } from '../packing/correct-count.js';
import { CorrectFilmUse } from '../packing/correct-film-use.js';
import { FitFilm } from '../packing/fit-film.js';
import { countsOf } from '../packing/packing-runs.js';
import { palletOf } from '../pallets/pallet-list.js';
import { standingOfPallet } from '../pallets/pallet-standing.js';
import { SwapPalletLabels } from '../pallets/swap-pallet-labels.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { CorrectionRipple } from './correction-ripple.js';
import { PlaceHold } from './place-hold.js';
import type { Ripple } from './ripple.js';

let house: TestHouse;
let plant: Plant;
let reader: ReadFrom;

beforeEach(async () => {
  house = await openHouse();
  reader = readerOf(house);
  plant = await aPlant(house, { packsPerPallet: 100, capacityGrams: 30_000_000 });
});
afterEach(async () => {
  await house.close();
});

const refused = (code: string): unknown => expect.objectContaining({ code });

const previewed = (correct: (asked: Asked) => Promise<unknown>): Promise<Ripple> =>
  house.get(CorrectionRipple).of(asking(plant.actor), correct);

const palletIds = ({ pallets }: Ripple): readonly string[] => pallets.map(({ palletId }) => palletId).toSorted();

const isOnHold = async (palletId: string): Promise<boolean> =>
  (await standingOfPallet(reader, palletId)).state === 'on-hold';

/** How much there is of everything that a correction writes. */
async function recorded(): Promise<unknown> {
  return reader.sql`
    SELECT (SELECT COUNT(*) FROM "journal_entry") AS "entries", (SELECT COUNT(*) FROM "tip") AS "tips",
      (SELECT COUNT(*) FROM "tip" WHERE "voided_by" IS NOT NULL) AS "void", (SELECT COUNT(*) FROM "pack_count") AS "counts",
      (SELECT COUNT(*) FROM "outbox_job") AS "jobs", (SELECT COUNT(*) FROM "idempotency_key") AS "keys"`;
}

async function held(kind: 'bulk-bag' | 'film-lot' | 'hopper-period', id: string): Promise<string> {
  return (await house.get(PlaceHold).execute(asking(plant.actor), { kind, id, reason: 'glass' })).number;
}

async function openRunId(): Promise<string> {
  const [row] = await reader.sql<{ id: string }>`SELECT "id" FROM "packing_run" ORDER BY "id" DESC LIMIT 1`;
  return row?.id ?? '';
}

describe('a late tip, previewed', () => {
  const form = (bag: string, openedAt: string) => ({
    ...{ bag, openedAt, hopperId: plant.hopperId, isOff: true, happened: true, reason: 'found at the hoist' },
  });

  it('says which lot, pallets and deliveries change, by how much at most, and what holds newly reach; nothing is recorded', async () => {
    const { startedAt, lotId, gone, loaded, inStore } = await threePallets(house, plant);
    const bag = await aReleasedBag(house, plant, { netGrams: 900_000 });
    const hold = await held('bulk-bag', bag.id);
    const before = await recorded();
    const ripple = await previewed((asked) => house.get(TipBag).execute(asked, form(bag.id, startedAt)));
    expect(await recorded()).toEqual(before);
    expect(ripple.lots.map((lot) => lot.lotId)).toEqual([lotId]);
    expect(palletIds(ripple)).toEqual([gone, loaded, inStore].toSorted());
    expect(ripple.pallets[0]).toMatchObject({ palletId: gone, isGone: true, heldBy: [hold], freedOf: [] });
    expect(ripple.deliveries).toHaveLength(2);
    expect(ripple.deliveries.filter(({ isGone }) => isGone)).toHaveLength(1);
    const all = await Promise.all([gone, loaded, inStore].map(async (id) => (await palletOf(reader, id)).sscc));
    const [changed] = ripple.holds;
    expect({ ...changed, reaches: changed?.reaches.toSorted() }).toEqual({
      ...{ number: hold, reaches: all.toSorted(), leaves: [] },
    });
    expect(ripple.bags).toMatchObject([
      { bagId: bag.id, statusBefore: 'full', statusAfter: 'empty', remainingGramsBefore: 900_000 },
    ]);
    const lot = ripple.lots[0]?.sources.find(({ bagId }) => bagId === bag.id);
    expect(lot?.before).toBeNull();
    expect(ripple.byGrams).toBeGreaterThanOrEqual(lot?.after?.mostGrams ?? Infinity);
    expect(await isOnHold(gone)).toBe(false);
  });

  it('is what every answer says once it is recorded', async () => {
    const { startedAt, runId, gone } = await threePallets(house, plant);
    const bag = await aReleasedBag(house, plant, { netGrams: 900_000 });
    await held('bulk-bag', bag.id);
    const tipLate = (asked: Asked) => house.get(TipBag).execute(asked, form(bag.id, startedAt));
    const { mark, pallets } = await previewed(tipLate);
    await tipLate({ ...asking(plant.actor), previewed: mark });
    const [link] = (await sourcesOfRanges(reader, [{ runId, fromCount: 0, toCount: 100 }])).filter(
      ({ bagId }) => bagId === bag.id,
    );
    const promised = pallets.find(({ palletId }) => palletId === gone)?.sources.find(({ bagId }) => bagId === bag.id);
    expect(promised?.after?.mostGrams).toBeGreaterThan(0);
    expect(link).toMatchObject({ ...promised?.after });
    expect(await isOnHold(gone)).toBe(true);
  });

  it('is refused with its mark where something was recorded meanwhile that changes it, and then nothing is recorded', async () => {
    const { startedAt, runId } = await threePallets(house, plant);
    const bag = await aReleasedBag(house, plant);
    const tipLate = (asked: Asked) => house.get(TipBag).execute(asked, form(bag.id, startedAt));
    const { mark } = await previewed(tipLate);
    house.clock.pass(10);
    await packsCounted(house, plant, runId, 310);
    await expect(tipLate({ ...asking(plant.actor), previewed: mark.replace(/^./, 'x') })).rejects.toEqual(
      refused('preview-is-stale'),
    );
    const hold = await held('bulk-bag', bag.id);
    const before = await recorded();
    await expect(tipLate({ ...asking(plant.actor), previewed: mark })).rejects.toEqual(refused('preview-is-stale'));
    expect(await recorded()).toEqual(before);
    const again = await previewed(tipLate);
    expect(again.holds.map(({ number }) => number)).toEqual([hold]);
    await expect(tipLate({ ...asking(plant.actor), previewed: again.mark })).resolves.toMatchObject({ bagId: bag.id });
  });

  it('still holds while the line only counts on', async () => {
    const { startedAt, runId } = await threePallets(house, plant);
    const bag = await aReleasedBag(house, plant);
    const tipLate = (asked: Asked) => house.get(TipBag).execute(asked, form(bag.id, startedAt));
    const { mark } = await previewed(tipLate);
    house.clock.pass(1);
    await packsCounted(house, plant, runId, 301);
    await expect(tipLate({ ...asking(plant.actor), previewed: mark })).resolves.toMatchObject({ bagId: bag.id });
  });
});

describe('a correction, previewed', () => {
  it('of a tip that did not occur frees what its bag’s hold reached, and puts the bag back', async () => {
    const { firstBag, firstTip, gone, loaded, inStore } = await threePallets(house, plant);
    const hold = await held('bulk-bag', firstBag);
    const form = { why: 'did-not-occur', reason: 'the spout was never opened' } as const;
    const ripple = await previewed((asked) => house.get(CorrectTip).execute(asked, firstTip, form));
    expect(palletIds(ripple)).toEqual([gone, loaded, inStore].toSorted());
    expect(ripple.holds).toMatchObject([{ number: hold, reaches: [] }]);
    expect(ripple.holds[0]?.leaves).toHaveLength(3);
    expect(ripple.bags).toMatchObject([{ bagId: firstBag, statusBefore: 'empty', statusAfter: 'full' }]);
    expect(await isOnHold(gone)).toBe(true);
  });

  it('of a count says that packs thought to be earlier were packed after the tip', async () => {
    let bag = '';
    const { runId, gone } = await threePallets(house, plant, async () => {
      bag = (await aTippedBag(house, plant, { netGrams: 1_000_000 })).bag.id;
    });
    const hold = await held('bulk-bag', bag);
    const count = (await countsOf(reader, [runId])).find(({ packCount }) => packCount === 100);
    const form = { why: 'incorrect-data', packCount: 50, reason: 'counter misread' } as const;
    const ripple = await previewed((asked) => house.get(CorrectCount).execute(asked, count?.id ?? '', form));
    const { sscc } = await palletOf(reader, gone);
    expect(ripple.holds).toEqual([{ number: hold, reaches: [sscc], leaves: [] }]);
    expect(ripple.pallets.find(({ palletId }) => palletId === gone)).toMatchObject({ isGone: true, heldBy: [hold] });
  });

  it('of a film names the pallets that were not packed with it after all, and the hold on it', async () => {
    let [useId, filmLotId] = ['', ''];
    const { gone, loaded, inStore } = await threePallets(house, plant, async () => {
      const film = { film: 'F-1', kind: 'film', name: 'roll', supplierCode: 'S-1', packCount: 100 } as const;
      ({ id: useId, filmLotId } = await house.get(FitFilm).execute(asking(plant.actor), await openRunId(), film));
    });
    const hold = await held('film-lot', filmLotId);
    const form = { why: 'did-not-occur', reason: 'it was the other line' } as const;
    const ripple = await previewed((asked) => house.get(CorrectFilmUse).execute(asked, useId, form));
    expect(palletIds(ripple)).toEqual([loaded, inStore].toSorted());
    expect(ripple.pallets.find(({ palletId }) => palletId === loaded)).toMatchObject({
      ...{ filmCodesBefore: ['F-1'], filmCodesAfter: [], heldBy: [], freedOf: [hold] },
    });
    expect(palletIds(ripple)).not.toContain(gone);
  });

  it('of two labels says what comes to stand under the one that has gone', async () => {
    let bag = '';
    const { gone, inStore } = await threePallets(house, plant, async () => {
      bag = (await aTippedBag(house, plant, { netGrams: 1_000_000 })).bag.id;
    });
    const hold = await held('bulk-bag', bag);
    const [one, other] = [(await palletOf(reader, gone)).sscc, (await palletOf(reader, inStore)).sscc];
    const form = { one, other, reason: 'seen on the dock' };
    const ripple = await previewed((asked) => house.get(SwapPalletLabels).execute(asked, form));
    expect(ripple.holds).toEqual([{ number: hold, reaches: [one], leaves: [other] }]);
    expect(ripple.deliveries).toMatchObject([{ isGone: true, palletCount: 1 }]);
  });

  it('of a bag’s weight says by how many kilograms at most', async () => {
    const { firstBag, inStore } = await threePallets(house, plant, async () => {
      await aTippedBag(house, plant, { netGrams: 1_000_000 });
    });
    const [weighing] = await reader.sql<{ id: string; grossGrams: number }>`
      SELECT "id", "gross_grams" AS "grossGrams" FROM "bag_weighing" WHERE "bag_id" = ${firstBag}`;
    const grossGrams = (weighing?.grossGrams ?? 0) - 700_000;
    const form = { why: 'incorrect-data', grossGrams, reason: 'digits swapped' } as const;
    const ripple = await previewed((asked) => house.get(CorrectWeighing).execute(asked, weighing?.id ?? '', form));
    expect(palletIds(ripple)).toContain(inStore);
    expect(ripple.byGrams).toBeGreaterThan(0);
    expect(ripple.byGrams).toBeLessThanOrEqual(700_000);
  });
});

describe('a proven empty that was wrong', () => {
  /** Empty after the first pallet, then another bag, and the other two pallets. */
  async function emptied() {
    let [bag, empty] = ['', ''];
    const made = await threePallets(house, plant, async () => {
      const counts = [{ run: await openRunId(), packCount: 100 }];
      empty = (await aProvenEmpty(house, plant, { happened: true, counts })).endedPeriodId;
      house.clock.pass(20);
      bag = (await aTippedBag(house, plant, { netGrams: 1_000_000 })).bag.id;
    });
    return { ...made, bag, empty };
  }

  const correct = (id: string, form: Parameters<CorrectEmpty['execute']>[2]) => (asked: Asked) =>
    house.get(CorrectEmpty).execute(asked, id, form);
  const withdrawal = { why: 'did-not-occur', reason: 'only the hatch was opened' } as const;

  it('withdrawn, lets a bag’s hold reach what was packed after it: previewed, and then so', async () => {
    const { firstBag, empty, gone, loaded, inStore } = await emptied();
    const hold = await held('bulk-bag', firstBag);
    expect([await isOnHold(gone), await isOnHold(loaded)]).toEqual([true, false]);
    const ripple = await previewed(correct(empty, withdrawal));
    expect(ripple.holds).toMatchObject([{ number: hold, leaves: [] }]);
    expect(ripple.pallets.filter(({ heldBy }) => heldBy.includes(hold)).map(({ palletId }) => palletId)).toEqual(
      expect.arrayContaining([loaded, inStore]),
    );
    await correct(empty, withdrawal)({ ...asking(plant.actor), previewed: ripple.mark });
    expect([await isOnHold(gone), await isOnHold(loaded), await isOnHold(inStore)]).toEqual([true, true, true]);
    expect(await currentPeriod(reader, plant.hopperId)).toMatchObject({ id: empty, endedAt: null });
    await expect(correct(empty, withdrawal)(asking(plant.actor))).rejects.toEqual(refused('already-corrected'));
  });

  it('moved before the first pallet, takes that out of the reach of the bag before, with a second person', async () => {
    const { startedAt, empty, bag, gone } = await emptied();
    const { personId } = await aPerson(house, plant.siteId);
    await held('bulk-bag', bag);
    expect(await isOnHold(gone)).toBe(false);
    const provenAt = new Date(Date.parse(startedAt) + 9 * 60_000).toISOString();
    const form = { why: 'incorrect-data', provenAt, secondPersonId: personId, reason: 'noted at nine past' } as const;
    const ripple = await previewed(correct(empty, form));
    expect(palletIds(ripple)).toContain(gone);
    const answer = await correct(empty, form)(asking(plant.actor));
    expect(answer).toMatchObject({ endedPeriodId: empty, provenAt });
    expect(await currentPeriod(reader, plant.hopperId)).toMatchObject({ id: answer.periodId, startedAt: provenAt });
    expect(answer.doubtGrams).toBeGreaterThan(0);
  });

  it.each([
    ['without the second person', {}, 'bad-form'],
    ['as it was', { second: true }, 'empty-as-it-was'],
    [
      'with an upper residue below the lower',
      { second: true, residueGrams: 9, residueUpperGrams: 3 },
      'limits-out-of-order',
    ],
  ])('is not corrected %s, and nothing changes', async (_, { second, ...part }: { second?: boolean }, code) => {
    const { empty } = await emptied();
    const { personId } = await aPerson(house, plant.siteId);
    const form = { why: 'incorrect-data', reason: 'test', secondPersonId: second ? personId : null, ...part } as const;
    const before = await recorded();
    const answered = correct(empty, form)(asking(plant.actor));
    await (code === 'bad-form' ? expect(answered).rejects.toThrow() : expect(answered).rejects.toEqual(refused(code)));
    expect(await recorded()).toEqual(before);
  });

  it('is corrected after a later one, and not while a hold is on the period that it began', async () => {
    const { empty } = await emptied();
    const begun = await currentPeriod(reader, plant.hopperId);
    await held('hopper-period', begun?.id ?? '');
    await expect(correct(empty, withdrawal)(asking(plant.actor))).rejects.toEqual(refused('period-on-hold'));
    house.clock.pass(10);
    await aProvenEmpty(house, plant, { happened: true });
    await expect(correct(empty, withdrawal)(asking(plant.actor))).rejects.toEqual(refused('empty-went-on'));
  });

  it('is not moved to before the empty that came before it', async () => {
    const { betweenAt } = await emptied();
    house.clock.pass(10);
    const { endedPeriodId } = await aProvenEmpty(house, plant, { happened: true });
    const { personId } = await aPerson(house, plant.siteId);
    const form = { why: 'incorrect-data', provenAt: betweenAt, secondPersonId: personId, reason: 'test' } as const;
    const moved = correct(endedPeriodId, form)(asking(plant.actor));
    await expect(moved).rejects.toEqual(refused('already-proven-empty'));
  });
});

describe('corrections that contradict each other', () => {
  let lead: SignedInPerson;
  beforeEach(async () => {
    lead = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['line-lead'] }));
  });

  it('are answered as such by the preview too: a tip corrected twice, by its old record', async () => {
    const { firstTip } = await threePallets(house, plant);
    const path = `/api/tips/${firstTip}/corrections`;
    const form = { why: 'did-not-occur', reason: 'never opened' };
    const preview = await lead.post(`${path}/preview`, form);
    expect(preview).toMatchObject({ status: 200, body: { mark: expect.stringMatching(/^\d+\.[0-9a-f]{16}$/) } });
    expect((await lead.post(path, form)).status).toBe(201);
    const before = await recorded();
    for (const again of [path, `${path}/preview`]) {
      const twice = await lead.post(again, form);
      expect(twice).toMatchObject({ status: 409, body: { type: 'problem:already-corrected' } });
    }
    expect(await recorded()).toEqual(before);
  });

  it('a correction of a correction is one of the record that stands now', async () => {
    const { firstTip, startedAt } = await threePallets(house, plant);
    const later = new Date(Date.parse(startedAt) + 60_000).toISOString();
    const form = { why: 'incorrect-data', openedAt: later, reason: 'one minute later' };
    const corrected = await lead.post(`/api/tips/${firstTip}/corrections`, form);
    expect(corrected.status).toBe(201);
    const { id } = corrected.body as { readonly id: string };
    const same = await lead.post(`/api/tips/${id}/corrections/preview`, form);
    expect(same).toMatchObject({ status: 409, body: { type: 'problem:nothing-to-correct' } });
    const back = await lead.post(`/api/tips/${id}/corrections/preview`, { ...form, openedAt: startedAt });
    expect(back.status).toBe(200);
  });

  it('a count that would go back, a film that was never known: refused as in earnest, nothing changed', async () => {
    const { runId } = await threePallets(house, plant);
    const count = (await countsOf(reader, [runId])).find(({ packCount }) => packCount === 200);
    const before = await recorded();
    const back = await lead.post(`/api/counts/${count?.id}/correction/preview`, {
      ...{ why: 'incorrect-data', packCount: 50, reason: 'test' },
    });
    expect(back).toMatchObject({ status: 409, body: { type: 'problem:count-goes-back' } });
    const unknown = await lead.post(`/api/film-uses/${runId}/correction/preview`, {
      ...{ why: 'did-not-occur', reason: 'test' },
    });
    expect(unknown.status).toBe(404);
    expect(await recorded()).toEqual(before);
  });
});
