import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { aPackWeigher } from '../../../test/support/a-pack-weigher.js';
import { aPerson, signedIn, type SignedInPerson } from '../../../test/support/a-person.js';
import { aPlant, type Plant } from '../../../test/support/a-plant.js';
import { aPackScale, aRun, packsCounted } from '../../../test/support/a-run.js';
import { asking, openHouse, type TestHouse } from '../../../test/support/house.js';
import { pageText } from '../../../test/support/page-text.js';
import { weightsOf } from '../../core/weight-blocks/weights.examples.js';
import { CloseRun } from '../../packing/close-run.js';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { AddPackFormat } from '../../plant/add-pack-format.js';
import { addToSummaries } from '../kept/add-to-summaries.js';
import { WeighHandSample } from '../weigh-hand-sample.js';
import type { MarketVerdict } from './run-weights.js';
import type { RunWeightsApi } from './run-weights.api.js';

type RunWeightsJson = Awaited<ReturnType<RunWeightsApi['ofRun']>>;

/** Packs of one net weight, each. */
type Group = readonly [packCount: number, netMilligrams: number, isRejected?: boolean];

const firstHour = Math.floor(Date.UTC(2026, 2, 12, 3) / 10);
const hourCentiseconds = 360_000;

describe('the fill weights of a run', () => {
  let house: TestHouse;
  let plant: Plant;
  let auditor: SignedInPerson;
  let spaniard: SignedInPerson;
  let weigherId: string;

  beforeAll(async () => {
    house = await openHouse();
    plant = await aPlant(house);
    auditor = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['auditor'] }));
    const wishes = { roles: ['loader'], language: 'es' } as const;
    spaniard = await signedIn(house, await aPerson(house, plant.siteId, wishes));
    ({ weigherId } = await aPackWeigher(house, plant));
  });
  afterAll(() => house.close());

  async function weigh(runId: string, groups: readonly Group[], nominalMilligrams: number): Promise<void> {
    let sequence = 0;
    const rows = groups.flatMap(([packCount, net, isRejected = false], hour) =>
      Array.from({ length: packCount }, (_, place) => {
        sequence += 1;
        return { sequence, at: firstHour + hour * hourCentiseconds + place, net, isRejected };
      }),
    );
    const added = { runId, weigherId, series: '1', nominalMilligrams, columns: weightsOf(rows) };
    await house.get(UnitOfWork).run((tx) => addToSummaries(tx, [added]));
  }

  const close = (runId: string, packCount: number): Promise<unknown> =>
    house.get(CloseRun).execute(asking(plant.actor), runId, { packCount, loosePackCount: 0 });

  const page = async (runId: string, query = '', by = auditor): Promise<string> => {
    const answer = await by.get(`/runs/${runId}/weights${query}`);
    expect(answer.status).toBe(200);
    expect(answer.text).not.toMatch(/style=|undefined|\bNaN\b|(run-weights|fill|weights|chart-rule)-[a-z]+(-|<)/);
    return pageText(answer.text);
  };
  const json = async (runId: string): Promise<RunWeightsJson> => {
    const answer = await auditor.get(`/api/runs/${runId}/weights`);
    expect(answer.status).toBe(200);
    return answer.body as RunWeightsJson;
  };
  const verdictOf = ({ verdicts }: RunWeightsJson, market: string): MarketVerdict =>
    verdicts.find((verdict) => verdict.market === market)!;

  const grams = (milligrams: number, places = 1): string =>
    (milligrams / 1000).toFixed(places).replace(/\B(?=(\d{3})+\.)/g, ' ');

  it('are not judged where nothing was weighed, and the page says what to do', async () => {
    const { runId } = await aRun(house, plant, { packCount: 120 });
    const said = await page(runId);
    expect(said).toContain('No pack of this run was weighed by a pack weigher, so no rule is judged.');
    expect(said).toContain('enter them as a hand sample');
    expect(said).toContain('Nor was a hand sample weighed');
    expect(said).toContain('120 counted packs were not weighed.');
    expect(said).not.toContain('Giveaway');
    const found = await json(runId);
    expect(found).toMatchObject({
      weighed: null,
      weighedPackCount: 0,
      unweighedPackCount: 120,
      hours: [],
      weighers: [],
    });
    expect(verdictOf(found, 'eu').overall).toBe('not-judged');
    expect(verdictOf(found, 'eu').ruleSets[0]?.lines.map(({ reason }) => reason)).toEqual(
      Array.from({ length: 3 }, () => 'nothing-weighed'),
    );
    const scaleId = await aPackScale(house, plant);
    const sample = { run: runId, scaleId, netDecigrams: [20_010, 20_030, 19_990, 20_010] };
    await house.get(WeighHandSample).execute(asking(plant.actor), sample);
    expect(await page(runId)).toContain('4 packs, on average 2 001.0 g. A hand sample judges no run');
    await close(runId, 120);
  });

  it('are judged by what was weighed: a pack beyond T2 breaks a rule, and page and JSON say the same', async () => {
    const { runId } = await aRun(house, plant);
    // T1 of 2 kg is 1970 g, T2 1940 g (Directive 76/211/EEC Annex I 2.4: 1.5 % from 1 kg to 10 kg).
    const groups: readonly Group[] = [
      [400, 2_003_000],
      [300, 2_005_000],
      [1, 1_935_000],
      [5, 1_900_000, true],
    ];
    await weigh(runId, groups, 2_000_000);
    await packsCounted(house, plant, runId, 800);
    const found = await json(runId);
    expect(found).toMatchObject({ countedPackCount: 800, weighedPackCount: 701, rejectedPackCount: 5 });
    expect(found).toMatchObject({ unweighedPackCount: 99, uncountedPackCount: 0, closedAt: null });
    // 400 × 3 g + 300 × 5 g − 65 g = 2635 g over 701 packs: 3.758916 g each.
    expect(found.weighed).toMatchObject({ giveawayMilligrams: 2_635_000, meanErrorMicrograms: 3_758_915 });
    expect(found.weighed?.bins.reduce((sum, { packCount }) => sum + packCount, 0)).toBe(701);
    expect(verdictOf(found, 'eu').ruleSets[0]?.lines).toMatchObject([
      { rule: 'mean', verdict: 'kept' },
      { rule: 'beyondT1', verdict: 'kept', shortCount: 1, allowedCount: 17, belowMilligrams: 1_970_000 },
      { rule: 'beyondT2', verdict: 'broken', shortCount: 1, allowedCount: 0, belowMilligrams: 1_940_000 },
    ]);

    const said = await page(runId);
    expect(said).toContain('European Union: the 701 packs that were weighed do not keep: Packs beyond T2.');
    expect(said).toContain('1 of 701 is below 1 940 g; none may be.');
    expect(said).toContain('1 of 701 is below 1 970 g; up to 17 may be.');
    expect(said).toContain('Written down from memory');
    expect(said).toContain('an inspector draws a sample and decides');
    expect(said).toContain('99 counted packs were not weighed.');
    expect(said).toContain('Counted packs 800 Weighed packs 701 Not weighed 99 Weighed and rejected 5');
    expect(said).toContain('Of all weighed packs 2.635 kg Per pack 3.75 g');
    for (const { fromMilligrams, untilMilligrams, packCount } of found.weighed?.bins ?? [])
      expect(said).toContain(` ${grams(fromMilligrams)} ${grams(untilMilligrams)} ${packCount} `);
    expect(found.hours.map(({ packCount }) => packCount)).toEqual([400, 300, 1]);
    for (const { packCount, meanErrorMicrograms } of found.hours)
      expect(said).toContain(` ${packCount} ${grams(2_000_000 + meanErrorMicrograms / 1000, 2)} `);
    await close(runId, 800);
  });

  it('are judged by the rules of every market, the one that is asked for first', async () => {
    const { runId } = await aRun(house, plant);
    // 22 of 1000 beyond T1: within 2.5 %, beyond the 2 % that Germany asks at packing (FPackV section 9(3)).
    await weigh(
      runId,
      [
        [978, 2_010_000],
        [22, 1_969_999],
      ],
      2_000_000,
    );
    await packsCounted(house, plant, runId, 990);
    const found = await json(runId);
    expect(found.verdicts.map(({ market, overall }) => `${market} ${overall}`)).toEqual([
      'eu kept',
      'uk kept',
      'oiml-country kept',
      'us kept',
      'de broken',
      'ca not-judged',
    ]);
    expect(await page(runId)).toContain('European Union: the 1 000 packs that were weighed keep every rule.');
    expect(await page(runId, '?market=de')).toContain('Germany: the 1 000 packs that were weighed do not keep: Packs');
    expect(await page(runId, '?market=us')).toContain(
      'United States: the 1 000 packs that were weighed keep every rule',
    );
    const canada = await page(runId, '?market=ca');
    expect(canada).toContain('Canada: of the 1 000 packs that were weighed not every rule could be judged.');
    expect(canada).toContain('The table that says how short a pack may be was not at hand');
    expect(canada).toContain('10 packs were weighed beyond those counted.');
    expect((await auditor.get(`/runs/${runId}/weights?market=mars`)).status).toBe(422);
    expect(await page(runId, '', spaniard)).toContain(
      'Unión Europea: 1 000 paquetes pesados cumplen todas las reglas.',
    );
    const run = await auditor.get(`/runs/${runId}`);
    expect(run.text).toContain(`href="/runs/${runId}/weights"`);
    expect((await auditor.get(`/runs/${runId}/weights`)).text).toContain(`href="/runs/${runId}"`);
    await close(runId, 1000);
  });

  it('are outside of the rules of the ℮ mark for bags of 25 kg, where the United Kingdom still has rules', async () => {
    const format = await house.get(AddPackFormat).execute(asking(plant.actor), {
      ...{ code: 'WS-25KG', name: 'White sugar 25 kg', gtin: '9520123000301', nominalGrams: 25_000 },
      ...{ packTareGrams: 120, packsPerPallet: 40, palletTareGrams: 25_000, codePattern: 'L{y}{ddd}{line}{shift}' },
      ...{ assumedLowerMilligrams: 24_900_000, assumedUpperMilligrams: 25_200_000, gradeIds: [plant.gradeId] },
    });
    const { runId } = await aRun(house, plant, { formatId: format.id });
    await weigh(runId, [[50, 25_030_000]], 25_000_000);
    await packsCounted(house, plant, runId, 50);
    const said = await page(runId);
    expect(said).toContain('European Union: No rule on averages applies here above 10 000 g.');
    expect(said).toContain('Limits and permitted counts by The Weights and Measures (Packaged Goods) Regulations 2006');
    expect(said).toContain('A chart of means needs packs of two hours.');
    expect(await page(runId, '?market=uk')).toContain('the 50 packs that were weighed keep every rule.');
    const found = await json(runId);
    expect(verdictOf(found, 'eu')).toMatchObject({
      overall: 'not-judged',
      ruleSets: [],
      outside: { kind: 'above-scope', upToMilligrams: 10_000_000 },
    });
    expect(verdictOf(found, 'uk').overall).toBe('kept');
    const other = await aPlant(house, { siteCode: 'OTHER' });
    const stranger = await signedIn(house, await aPerson(house, other.siteId));
    expect((await stranger.get(`/api/runs/${runId}/weights`)).status).toBe(404);
    expect((await stranger.get(`/runs/${runId}/weights`)).status).toBe(404);
  });

  it('say what cannot be drawn or may be counted twice', async () => {
    const format = await house.get(AddPackFormat).execute(asking(plant.actor), {
      ...{ code: 'WS-60KG', name: 'White sugar 60 kg', gtin: '9520123000400', nominalGrams: 60_000 },
      ...{ packTareGrams: 200, packsPerPallet: 20, palletTareGrams: 25_000, codePattern: 'L{y}{ddd}{line}{shift}' },
      ...{ assumedLowerMilligrams: 59_800_000, assumedUpperMilligrams: 60_400_000, gradeIds: [plant.gradeId] },
    });
    const lineId = plant.lineIds[1];
    const large = await aRun(house, plant, { formatId: format.id, lineId });
    await weigh(large.runId, [[30, 60_040_000]], 60_000_000);
    const said = await page(large.runId);
    expect(said).toContain('Where OIML R 87 is law No rule on averages applies here above 50 000 g.');
    expect(said).toContain('No rule here counts packs of this nominal quantity by T1 and T2');
    await close(large.runId, 30);

    const { runId } = await aRun(house, plant, { lineId });
    const groups: readonly Group[] = [
      [19, 2_001_000],
      [1, 0],
    ];
    await weigh(runId, groups, 2_000_000);
    ({ weigherId } = await aPackWeigher(house, plant));
    await weigh(runId, groups, 2_000_000);
    const twice = await page(runId);
    expect(twice).toContain('2 pack weighers weighed packs of this run.');
    expect(twice).toContain('The outermost stretch also holds packs beyond it: the lightest has 0.0 g');
    expect(twice).toContain('the packs hold less than they say. Raise the setpoint');
    expect(twice).toContain('do not keep: Mean, Packs beyond T1, Packs beyond T2.');
    const found = await json(runId);
    expect(found.weighers.map(({ accepted }) => accepted.packCount)).toEqual([20, 20]);
    expect(found.hours.map(({ packCount }) => packCount)).toEqual([38, 2]);
    // 38 × 1 g − 2 × 2000 g.
    expect(found.weighed?.giveawayMilligrams).toBe(-3_962_000);
  });
});
