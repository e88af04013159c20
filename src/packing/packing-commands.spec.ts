import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { UnitOfWork } from '../platform/database/unit-of-work.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { shifted } from '../platform/clock.js';
import { SystemIds } from '../platform/ids.js';
import { PackFormat } from '../plant/pack-format.entity.js';
import { openPointsOf } from '../open-points/open-points.js';
import { hasSentence, say } from '../platform/sentences/sentences.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { aPackScale, aRun, packsCounted } from '../../test/support/a-run.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { ChangeCode } from './change-code.js';
import { CloseRun } from './close-run.js';
import { CorrectCoderChange } from './correct-coder-change.js';
import { CorrectCount } from './correct-count.js';
import { CorrectFilmUse } from './correct-film-use.js';
import { CorrectLooseCount } from './correct-loose-count.js';
import { CorrectRemoval } from './correct-removal.js';
import { CorrectStop } from './correct-stop.js';
import { CountLoosePacks } from './count-loose-packs.js';
import { FitFilm } from './fit-film.js';
import {
  countsOf,
  filmRanges,
  findLots,
  looseCounts,
  lotRanges,
  openRunOfLine,
  rangesOfLot,
  removalsOfHopper,
  runOf,
  stopsOf,
} from './packing-runs.js';
import { RemoveSugar } from './remove-sugar.js';
import { rebuildRunStates } from './run-states.js';
import { StartLineAgain } from './start-line-again.js';
import { StopLine } from './stop-line.js';

let house: TestHouse;
let plant: Plant;
let from: ReadFrom;
let siteCount = 0;

beforeAll(async () => {
  house = await openHouse();
  from = house.app.get<ReadFrom>(READER, { strict: false });
});

/** Each test packs in a plant of its own, on a day of its own: 07:00 in the plant, early shift. */
beforeEach(async () => {
  siteCount += 1;
  house.clock.set('2026-03-12T06:00:00.000Z');
  plant = await aPlant(house, { siteCode: `T${siteCount}` });
});

afterAll(async () => {
  expect(await house.get(UnitOfWork).run((tx) => rebuildRunStates(tx))).toBe(0);
  await house.close();
});

type Form<Command extends { execute(...args: never[]): unknown }> =
  Parameters<Command['execute']> extends [unknown, ...infer Rest] ? Rest : never;

const changeCode = (...form: Form<ChangeCode>) => house.get(ChangeCode).execute(asking(plant.actor), ...form);
const fitFilm = (...form: Form<FitFilm>) => house.get(FitFilm).execute(asking(plant.actor), ...form);
const closeRun = (...form: Form<CloseRun>) => house.get(CloseRun).execute(asking(plant.actor), ...form);
const countLoose = (...form: Form<CountLoosePacks>) => house.get(CountLoosePacks).execute(asking(plant.actor), ...form);
const removeSugar = (...form: Form<RemoveSugar>) => house.get(RemoveSugar).execute(asking(plant.actor), ...form);
const stopLine = (...form: Form<StopLine>) => house.get(StopLine).execute(asking(plant.actor), ...form);
const startAgain = (...form: Form<StartLineAgain>) => house.get(StartLineAgain).execute(asking(plant.actor), ...form);

/** Refused with this code, and the catalogue has a sentence for it with every fact filled in. */
async function refused(attempt: Promise<unknown>, code: string): Promise<void> {
  const error = await attempt.then(
    () => null,
    (reason: unknown) => reason as { code: string; facts: Record<string, string | number | null> },
  );
  expect(error?.code).toBe(code);
  expect(hasSentence(code)).toBe(true);
  expect(say(code, error?.facts)).not.toMatch(/\{\w+\}/);
}

const badForm = (attempt: Promise<unknown>, field: string) =>
  expect(attempt).rejects.toMatchObject({ name: 'BadForm', problems: [expect.objectContaining({ field })] });

describe('the code that the coder prints', () => {
  it('makes lots of the codes actually printed, each over its packs', async () => {
    const { runId } = await aRun(house, plant);
    const first = await changeCode(runId, { code: 'l6071 1m 07:02', packCount: 0 });
    expect(first).toMatchObject({ code: 'L60711M', intendedCode: 'L60711M', isAsIntended: true, firstPack: 0 });
    house.clock.pass(60);
    await packsCounted(house, plant, runId, 3000);
    const second = await changeCode(runId, { code: 'L60711L' });
    expect(second).toMatchObject({ isAsIntended: false, firstPack: 3000 });
    expect(await lotRanges(from, runId)).toMatchObject([
      { code: 'L60711M', fromCount: 0, toCount: 3000 },
      { code: 'L60711L', fromCount: 3000, toCount: null },
    ]);
    expect(await rangesOfLot(from, second.lotId)).toMatchObject([{ runId, fromCount: 3000, toCount: null }]);
  });

  it('keeps a wrong code searchable and opens a point for quality with both texts', async () => {
    const { runId } = await aRun(house, plant);
    const { lotId } = await changeCode(runId, { code: 'L50711M', packCount: 0 });
    expect(await findLots(from, plant.siteId, ' 5071-1m ')).toMatchObject([{ id: lotId, code: 'L50711M' }]);
    expect(await findLots(from, plant.siteId, '5071', { prefix: true })).toHaveLength(1);
    expect(await findLots(from, plant.siteId, '5071')).toHaveLength(0);
    const [point] = await openPointsOf(from, plant.siteId, { state: 'open', role: 'quality-officer', limit: 5 });
    expect(point).toMatchObject({ cause: 'code-not-as-intended', subjectId: lotId });
    expect(say(point!.cause, point!.facts)).toContain('L50711M');
    expect(say(point!.cause, point!.facts)).toContain('L60711M');
  });

  it('reads a time that runs into the code by the pattern of the format', async () => {
    plant = await aPlant(house, { siteCode: 'RUN', codePattern: 'L{y}{ddd}{line}{HH}{mm}' });
    const { runId } = await aRun(house, plant);
    expect(await changeCode(runId, { code: 'L607110702', packCount: 0 })).toMatchObject({
      code: 'L60711',
      isAsIntended: true,
    });
  });

  it('says so when the pattern asks for what the line has no word for', async () => {
    const formatId = new SystemIds().next();
    await house.get(UnitOfWork).run(async (tx) => {
      const usual = await tx.findOne(PackFormat, { id: plant.formatId });
      await tx.insert(PackFormat, { ...usual, id: formatId, code: 'WIDE', codePattern: 'L{y}{ddd}{line:3}' });
    });
    const { runId } = await aRun(house, plant, { formatId });
    expect(await changeCode(runId, { code: 'L6071XYZ', packCount: 0 })).toMatchObject({
      intendedCode: null,
      isAsIntended: false,
    });
  });

  it('asks for the counter when its last reading is too old, but not when the line stood', async () => {
    const { runId } = await aRun(house, plant);
    house.clock.pass(30);
    await refused(changeCode(runId, { code: 'L60711M' }), 'count-needed');
    await packsCounted(house, plant, runId, 0);
    await changeCode(runId, { code: 'L60711M', changedAt: shifted(house.clock.now(), -600_000) });
    expect(await lotRanges(from, runId)).toMatchObject([{ fromCount: 0 }]);
  });

  it('refuses a position that does not lie between the counts and changes around it', async () => {
    const { runId } = await aRun(house, plant);
    await changeCode(runId, { code: 'L60711M', packCount: 0 });
    house.clock.pass(30);
    await changeCode(runId, { code: 'L60711L', packCount: 900 });
    const between = shifted(house.clock.now(), -600_000);
    await refused(changeCode(runId, { code: 'L60711N', packCount: 901, changedAt: between }), 'count-goes-back');
    await changeCode(runId, { code: 'L60711N', packCount: 800, changedAt: between });
    house.clock.pass(1);
    await refused(changeCode(runId, { code: 'L60711M', packCount: 850 }), 'count-goes-back');
    await refused(changeCode(runId, { code: 'l60711l', packCount: 950 }), 'code-printed-already');
    const early = shifted(house.clock.now(), -45 * 60_000);
    await refused(changeCode(runId, { code: 'X1', packCount: 0, changedAt: early }), 'before-run-start');
    await badForm(changeCode(runId, { code: '- - -', packCount: 950 }), 'code');
    expect((await lotRanges(from, runId)).map((range) => [range.fromCount, range.toCount])).toEqual([
      [0, 800],
      [800, 900],
      [900, null],
    ]);
  });

  it('lets two lines come to the same code at once as one lot', async () => {
    plant = await aPlant(house, { siteCode: 'TWO', codePattern: 'L{y}{ddd}' });
    const one = await aRun(house, plant);
    const other = await aRun(house, plant, { lineId: plant.lineIds[1] });
    const [first, second] = await Promise.all([
      changeCode(one.runId, { code: 'L6071', packCount: 0 }),
      changeCode(other.runId, { code: 'L6071', packCount: 0 }),
    ]);
    expect(first.lotId).toBe(second.lotId);
    expect(await rangesOfLot(from, first.lotId)).toHaveLength(2);
  });

  it('corrects a code that was read wrongly, and clears the point that it had opened', async () => {
    const { runId } = await aRun(house, plant);
    const wrong = await changeCode(runId, { code: 'L60771M', packCount: 0 });
    const correct = house.get(CorrectCoderChange);
    const form = { why: 'incorrect-data' as const, reason: 'Misread' };
    await badForm(correct.execute(asking(plant.actor), wrong.id, form), 'code');
    await refused(
      correct.execute(asking(plant.actor), wrong.id, { ...form, changedAt: shifted(house.clock.now(), 60_000) }),
      'time-ahead',
    );
    const { change } = await correct.execute(asking(plant.actor), wrong.id, { ...form, code: 'L60711M' });
    expect(change).toMatchObject({ isAsIntended: true, firstPack: 0 });
    expect(await lotRanges(from, runId)).toMatchObject([{ code: 'L60711M', fromCount: 0 }]);
    expect(await countsOf(from, [runId])).toHaveLength(2);
    expect(await openPointsOf(from, plant.siteId, { state: 'open', limit: 5 })).toHaveLength(0);
    await refused(correct.execute(asking(plant.actor), wrong.id, { ...form, code: 'L60711M' }), 'already-corrected');
    const gone = { why: 'did-not-occur' as const, reason: 'The other line was meant' };
    await correct.execute(asking(plant.actor), change!.id, gone);
    expect(await lotRanges(from, runId)).toEqual([]);
    expect(await countsOf(from, [runId])).toMatchObject([{ occasion: 'start' }]);
  });
});

describe('film and labels', () => {
  it('registers a lot once, by whoever fits it first, and follows each kind by itself', async () => {
    const { runId } = await aRun(house, plant);
    await refused(fitFilm(runId, { film: 'f-88123', packCount: 0 }), 'film-lot-unknown');
    const film = { kind: 'film' as const, supplierCode: 'FS-02' };
    const first = await fitFilm(runId, { film: 'f-88123', ...film, packCount: 0 });
    await fitFilm(runId, { film: 'G-1', kind: 'glue', supplierCode: 'GL-01', packCount: 0 });
    await refused(fitFilm(runId, { film: 'F-88123' }), 'film-fitted-already');
    await refused(fitFilm(runId, { film: 'F-88123', kind: 'label' }), 'film-lot-of-other-kind');
    house.clock.pass(20);
    await refused(fitFilm(runId, { film: 'F-88124', ...film }), 'count-needed');
    const next = await fitFilm(runId, { film: 'F-88124', ...film, packCount: 700 });
    house.clock.pass(1);
    await refused(fitFilm(runId, { film: 'F-88123', packCount: 699 }), 'count-goes-back');
    expect(await filmRanges(from, first.filmLotId)).toMatchObject([{ runId, fromCount: 0, toCount: 700 }]);
    const form = { why: 'incorrect-data' as const, reason: 'Roll beside it' };
    const correct = house.get(CorrectFilmUse);
    await refused(correct.execute(asking(plant.actor), next.id, { ...form, film: 'F-0' }), 'film-lot-unknown');
    await badForm(correct.execute(asking(plant.actor), next.id, form), 'film');
    await correct.execute(asking(plant.actor), next.id, { ...form, packCount: 690 });
    expect(await filmRanges(from, first.filmLotId)).toMatchObject([{ fromCount: 0, toCount: 690 }]);
    expect((await runOf(from, runId)).packCount).toBe(690);
  });
});

describe('stops of a line', () => {
  it('records a stop and the restart, and one of two at once', async () => {
    const { runId, number } = await aRun(house, plant);
    house.clock.pass(10);
    const both = await Promise.allSettled([
      stopLine({ run: number, stopReason: 'jam', packCount: 400 }),
      stopLine({ run: number, stopReason: 'no-product' }),
    ]);
    expect(both.map((one) => one.status).sort()).toEqual(['fulfilled', 'rejected']);
    const [stop] = await stopsOf(from, [runId]);
    await refused(stopLine({ run: runId, stopReason: 'seal' }), 'line-stood-then');
    const early = shifted(house.clock.now(), -60_000);
    await refused(startAgain(stop!.id, { startedAgainAt: early }), 'restart-before-stop');
    house.clock.pass(12);
    expect(await startAgain(stop!.id, {})).toMatchObject({ minutes: 12 });
    await refused(startAgain(stop!.id, {}), 'line-runs-already');
    await expect(startAgain(runId, {})).rejects.toMatchObject({ name: 'NotFound', kind: 'line-stop' });
    const correct = house.get(CorrectStop);
    const form = { why: 'incorrect-data' as const, reason: 'It was the seal' };
    await badForm(correct.execute(asking(plant.actor), stop!.id, form), 'stopReason');
    await correct.execute(asking(plant.actor), stop!.id, { ...form, stopReason: 'seal' });
    const [corrected] = await stopsOf(from, [runId]);
    expect(corrected).toMatchObject({ reason: 'seal', startedAgainAt: house.clock.now() });
    await correct.execute(asking(plant.actor), corrected!.id, { why: 'did-not-occur', reason: 'Other line' });
    expect(await stopsOf(from, [runId])).toEqual([]);
  });
});

describe('sugar that leaves otherwise', () => {
  it('weighs rejects on a scale, or counts packs and leaves the mean to those who know it', async () => {
    const { runId } = await aRun(house, plant, { packCount: 100 });
    const scaleId = await aPackScale(house, plant, `P${siteCount}`);
    const startedAt = house.clock.now();
    const reject = { kind: 'reject' as const, lineId: plant.lineIds[0], fate: 'rework' as const };
    house.clock.pass(1);
    await removeSugar({ ...reject, removalReason: 'underweight', packCount: 3 });
    await removeSugar({ ...reject, removalReason: 'torn', netGrams: 5_950, scaleId });
    await removeSugar({
      kind: 'sweepings',
      hopperId: plant.hopperId,
      removalReason: 'floor',
      fate: 'waste',
      netGrams: 800,
      scaleId,
    });
    house.clock.pass(1);
    const removals = await removalsOfHopper(from, plant.hopperId, startedAt, house.clock.now());
    expect(
      removals.map(({ runId: run, packCount, grams, scaleErrorMilligrams }) => [
        run,
        packCount,
        grams,
        scaleErrorMilligrams,
      ]),
    ).toEqual([
      [runId, 3, 6000, null],
      [runId, null, 5950, 1000],
      [null, null, 800, 1000],
    ]);
    expect(await removalsOfHopper(from, plant.hopperId, startedAt, startedAt)).toEqual([]);
  });

  it('finds the run and hopper of the time, also of a run that was closed since', async () => {
    const { runId } = await aRun(house, plant);
    house.clock.pass(30);
    await closeRun(runId, { packCount: 900, loosePackCount: 0 });
    house.clock.pass(20);
    const then = shifted(house.clock.now(), -30 * 60_000);
    const sample = {
      kind: 'sample' as const,
      lineId: plant.lineIds[0],
      fate: 'retained' as const,
      removalReason: 'retained' as const,
    };
    expect(await removeSugar({ ...sample, packCount: 1, removedAt: then })).toMatchObject({ runId });
    await refused(removeSugar({ ...sample, packCount: 1 }), 'no-run-then');
    const scaleId = await aPackScale(house, plant, `P${siteCount}`);
    expect(await removeSugar({ ...sample, netGrams: 500, scaleId })).toMatchObject({ runId: null });
  });

  it('never lets sweepings or metal rejects go back, and wants all that a weight needs', async () => {
    await aRun(house, plant);
    const line = { lineId: plant.lineIds[0] };
    const sweepings = { kind: 'sweepings' as const, ...line, removalReason: 'floor' as const, fate: 'rework' as const };
    const scaleId = await aPackScale(house, plant, `P${siteCount}`);
    await refused(removeSugar({ ...sweepings, netGrams: 800, scaleId }), 'never-rework');
    const metal = { kind: 'reject' as const, removalReason: 'metal' as const, packCount: 1 };
    await refused(removeSugar({ ...metal, ...line, fate: 'rework' }), 'never-rework');
    const waste = { ...metal, fate: 'waste' as const };
    await badForm(removeSugar(waste), 'lineId');
    await badForm(removeSugar({ ...waste, ...line, hopperId: plant.hopperId }), 'hopperId');
    await badForm(removeSugar({ ...waste, ...line, packCount: null }), 'netGrams');
    await badForm(removeSugar({ ...waste, ...line, netGrams: 100 }), 'scaleId');
    await badForm(removeSugar({ ...waste, ...line, scaleId }), 'netGrams');
    await badForm(removeSugar({ ...waste, hopperId: plant.hopperId, packCount: null, netGrams: 1, scaleId }), 'lineId');
    await expect(removeSugar({ ...waste, lineId: plant.hopperId })).rejects.toMatchObject({ kind: 'packing-line' });
    const other = await aPlant(house, { siteCode: `X${siteCount}` });
    await expect(removeSugar({ ...waste, lineId: other.lineIds[0] })).rejects.toMatchObject({ kind: 'packing-line' });
    await expect(removeSugar({ ...waste, ...line, netGrams: 1, scaleId: other.scaleId })).rejects.toMatchObject({
      kind: 'scale',
    });
  });

  it('corrects a removal: what is left out stays as it was', async () => {
    await aRun(house, plant);
    const scaleId = await aPackScale(house, plant, `P${siteCount}`);
    const startedAt = house.clock.now();
    const { id } = await removeSugar({
      kind: 'reject',
      lineId: plant.lineIds[0],
      removalReason: 'torn',
      fate: 'rework',
      netGrams: 59_500,
      scaleId,
    });
    const correct = house.get(CorrectRemoval);
    const { removal } = await correct.execute(asking(plant.actor), id, {
      why: 'incorrect-data',
      reason: 'A zero too many',
      netGrams: 5_950,
    });
    expect(removal).toMatchObject({ grams: 5950, scaleId, fate: 'rework', reason: 'torn' });
    const gone = { why: 'did-not-occur' as const, reason: 'Entered twice' };
    await refused(correct.execute(asking(plant.actor), id, gone), 'already-corrected');
    await correct.execute(asking(plant.actor), removal!.id, gone);
    house.clock.pass(1);
    expect(await removalsOfHopper(from, plant.hopperId, startedAt, null)).toEqual([]);
  });
});

describe('handover and close', () => {
  it('counts loose packs at the handover and at the close', async () => {
    const { runId } = await aRun(house, plant, { packCount: 0 });
    house.clock.pass(60);
    const { id } = await countLoose(runId, { loosePackCount: 46, packCount: 3000 });
    await refused(countLoose(runId, { loosePackCount: 3001, packCount: 3000 }), 'more-loose-than-packed');
    expect(await looseCounts(from, [runId])).toMatchObject([{ id, packCount: 46 }]);
    const correct = house.get(CorrectLooseCount);
    const form = { why: 'incorrect-data' as const, reason: 'A table was forgotten' };
    await badForm(correct.execute(asking(plant.actor), id, form), 'loosePackCount');
    const { looseCountId } = await correct.execute(asking(plant.actor), id, { ...form, loosePackCount: 58 });
    expect(await looseCounts(from, [runId])).toMatchObject([{ id: looseCountId, packCount: 58 }]);
    expect((await runOf(from, runId)).packCount).toBe(3000);
  });

  it('closes a run once, with its last count, and points to packs whose code nobody recorded', async () => {
    const { runId } = await aRun(house, plant);
    house.clock.pass(10);
    await packsCounted(house, plant, runId, 500);
    await changeCode(runId, { code: 'L60711M', packCount: 500 });
    house.clock.pass(10);
    await refused(closeRun(runId, { packCount: 499, loosePackCount: 0 }), 'count-goes-back');
    await refused(closeRun(runId, { packCount: 900, loosePackCount: 901 }), 'more-loose-than-packed');
    const tooEarly = shifted(house.clock.now(), -15 * 60_000);
    await refused(closeRun(runId, { packCount: 400, loosePackCount: 0, closedAt: tooEarly }), 'run-went-on');
    const both = await Promise.allSettled([
      closeRun(runId, { packCount: 900, loosePackCount: 20 }),
      closeRun(runId, { packCount: 900, loosePackCount: 20 }),
    ]);
    expect(both.map((one) => one.status).sort()).toEqual(['fulfilled', 'rejected']);
    expect(await openRunOfLine(from, plant.lineIds[0])).toBeNull();
    expect(await lotRanges(from, runId)).toMatchObject([{ fromCount: 500, toCount: 900 }]);
    const [point] = await openPointsOf(from, plant.siteId, { state: 'open', limit: 5 });
    expect(point).toMatchObject({ cause: 'packs-without-code', facts: { packCount: 500 } });
    house.clock.pass(1);
    await refused(changeCode(runId, { code: 'L60711L', packCount: 900 }), 'run-is-closed');
    await refused(stopLine({ run: runId, stopReason: 'jam' }), 'run-is-closed');
    await refused(fitFilm(runId, { film: 'F-1', packCount: 900 }), 'run-is-closed');
    await refused(countLoose(runId, { loosePackCount: 0, packCount: 900 }), 'run-is-closed');
  });

  it('lets the next run start only after the close of the one before', async () => {
    const { runId } = await aRun(house, plant);
    const startedAt = house.clock.now();
    house.clock.pass(30);
    await closeRun(runId, { packCount: 10, loosePackCount: 0 });
    await refused(aRun(house, plant, { startedAt: shifted(startedAt, 60_000) }), 'line-was-running');
    await aRun(house, plant);
  });

  it('corrects a last count with its close, and opens the run again when the close did not occur', async () => {
    const { runId, number } = await aRun(house, plant);
    house.clock.pass(30);
    await closeRun(runId, { packCount: 9000, loosePackCount: 5 });
    const correct = house.get(CorrectCount);
    const counts = await countsOf(from, [runId]);
    const [start, close] = [counts[0]!.id, counts[1]!.id];
    const form = { why: 'incorrect-data' as const, reason: 'A zero too many' };
    await refused(correct.execute(asking(plant.actor), start, { ...form, packCount: 5 }), 'start-count-stays');
    await badForm(correct.execute(asking(plant.actor), close, form), 'packCount');
    const { countId } = await correct.execute(asking(plant.actor), close, { ...form, packCount: 900 });
    expect(await runOf(from, runId)).toMatchObject({ packCount: 900, closedAt: house.clock.now() });
    await refused(correct.execute(asking(plant.actor), close, { ...form, packCount: 900 }), 'already-corrected');
    const gone = { why: 'did-not-occur' as const, reason: 'The line went on' };
    const next = await aRun(house, plant);
    await refused(correct.execute(asking(plant.actor), countId!, gone), 'line-has-open-run');
    await closeRun(next.runId, { packCount: 0, loosePackCount: 0 });
    const answer = await correct.execute(asking(plant.actor), countId!, gone);
    expect(answer).toMatchObject({ isOpenAgain: true, countId: null });
    expect(await openRunOfLine(from, plant.lineIds[0])).toMatchObject({ number, packCount: 0, closedAt: null });
    expect(await looseCounts(from, [runId])).toEqual([]);
  });

  it('corrects a count that was read for a change with that change', async () => {
    const { runId } = await aRun(house, plant);
    await changeCode(runId, { code: 'L60711M', packCount: 0 });
    const count = (await countsOf(from, [runId])).find((one) => one.occasion === 'coder-change');
    const form = { why: 'incorrect-data' as const, reason: 'x', packCount: 1 };
    await refused(house.get(CorrectCount).execute(asking(plant.actor), count!.id, form), 'count-of-a-change');
    await expect(house.get(CorrectCount).execute(asking(plant.actor), runId, form)).rejects.toMatchObject({
      kind: 'pack-count',
    });
  });

  it('takes the same close sent twice once', async () => {
    const { runId } = await aRun(house, plant);
    house.clock.pass(1);
    const asked = asking(plant.actor, 'close-twice-key');
    const form = { packCount: 10, loosePackCount: 0 };
    const [first, second] = [
      await house.get(CloseRun).execute(asked, runId, form),
      await house.get(CloseRun).execute(asked, runId, form),
    ];
    expect(second).toEqual(first);
    expect(await countsOf(from, [runId])).toHaveLength(2);
  });
});
