import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { aPackWeigher } from '../../../test/support/a-pack-weigher.js';
import { aPerson, signedIn, type SignedInPerson } from '../../../test/support/a-person.js';
import { aPlant, type Plant } from '../../../test/support/a-plant.js';
import { aRun } from '../../../test/support/a-run.js';
import { asking, openHouse, type TestHouse } from '../../../test/support/house.js';
import { pageText } from '../../../test/support/page-text.js';
import { weightsOf } from '../../core/weight-blocks/weights.examples.js';
import { CloseRun } from '../../packing/close-run.js';
import { shifted, type Instant } from '../../platform/clock.js';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { AddPackFormat } from '../../plant/add-pack-format.js';
import { SetFormatSale } from '../format-sales/set-format-sale.js';
import { ChangeSetting } from '../line-settings/change-setting.js';
import { addToSummaries } from '../kept/add-to-summaries.js';
import type { LineFillApi } from './line-fill.api.js';

type LineFillJson = Awaited<ReturnType<LineFillApi['ofLine']>>;
type FormatJson = LineFillJson['formats'][number];

const dayMilliseconds = 86_400_000;
const nominalMilligrams = 2_000_000;

describe('how a line fills, and what to set it to', () => {
  let house: TestHouse;
  let plant: Plant;
  let auditor: SignedInPerson;
  let spaniard: SignedInPerson;
  let weigherIds: readonly [string, string];
  let endAt: Instant;

  beforeAll(async () => {
    house = await openHouse();
    plant = await aPlant(house);
    endAt = house.clock.now();
    auditor = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['auditor'] }));
    spaniard = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['loader'], language: 'es' }));
    const first = await aPackWeigher(house, plant, { code: 'W-A' });
    const second = await aPackWeigher(house, plant, { code: 'W-B', lineId: plant.lineIds[1] });
    weigherIds = [first.weigherId, second.weigherId];
  });
  afterAll(() => house.close());

  /** A closed run whose packs lie about a mean, half of them so far above and half so far below. */
  async function lot(wishes: {
    readonly line?: 0 | 1;
    readonly formatId?: string;
    readonly nominal?: number;
    readonly mean: number;
    readonly apart: number;
    readonly packCount?: number;
    readonly counted?: number;
    readonly daysAgo?: number;
  }): Promise<string> {
    const { line = 0, nominal = nominalMilligrams, mean, apart, packCount = 100, counted = packCount } = wishes;
    const startedAt = shifted(endAt, -(wishes.daysAgo ?? 1) * dayMilliseconds);
    const [lineId, weigherId] = [plant.lineIds[line], weigherIds[line]];
    const { runId } = await aRun(house, plant, { lineId, startedAt, formatId: wishes.formatId ?? plant.formatId });
    const at = Math.floor(Date.parse(startedAt) / 10);
    const rows = Array.from({ length: packCount }, (_, place) => ({
      ...{ sequence: place + 1, at: at + place, net: mean + (place % 2 === 0 ? apart : -apart), isRejected: false },
    }));
    if (rows.length > 0) {
      const added = { runId, weigherId, series: runId, nominalMilligrams: nominal, columns: weightsOf(rows) };
      await house.get(UnitOfWork).run((tx) => addToSummaries(tx, [added]));
    }
    house.clock.set(shifted(startedAt, 600_000));
    await house.get(CloseRun).execute(asking(plant.actor), runId, { packCount: counted, loosePackCount: 0 });
    house.clock.set(endAt);
    return runId;
  }

  const page = async (line: 0 | 1, query = '', by = auditor): Promise<string> => {
    const answer = await by.get(`/lines/${plant.lineIds[line]}/fill${query}`);
    expect(answer.status).toBe(200);
    expect(answer.text).not.toMatch(/style=|undefined|\bNaN\b|>(line-fill|setpoint|fill|field-name)-[a-z]/);
    return pageText(answer.text);
  };
  const json = async (line: 0 | 1, query = ''): Promise<LineFillJson> => {
    const answer = await auditor.get(`/api/lines/${plant.lineIds[line]}/fill${query}`);
    expect(answer.status).toBe(200);
    return answer.body as LineFillJson;
  };
  const only = ({ formats }: LineFillJson): FormatJson => {
    expect(formats).toHaveLength(1);
    return formats[0]!;
  };
  const sumOf = ({ advised }: FormatJson): number =>
    advised!.terms.reduce((sum, { milligrams }) => sum + milligrams, 0);

  it('says that nothing is advised of a line without runs, or whose runs nobody weighed', async () => {
    expect(await json(1)).toMatchObject({ period: null, formats: [] });
    expect(await page(1)).toContain('This line had no run in the last 90 days, so nothing is advised.');
    const runId = await lot({ line: 1, mean: 0, apart: 0, packCount: 0, counted: 80, daysAgo: 12 });
    const found = only(await json(1));
    expect(found).toMatchObject({ advised: null, present: null, missing: { why: 'nothing-weighed' }, packCount: 80 });
    expect(found.lots).toMatchObject([{ runId, weighedPackCount: 0, meanMilligrams: null, leftOut: 'not-weighed' }]);
    const said = await page(1);
    expect(said).toContain('No closed run of this format was weighed by a pack weigher');
    expect(said).toContain('no: not weighed');
  });

  it('advises nothing of too few lots, and says how many more it takes', async () => {
    await lot({ line: 1, mean: 2_006_000, apart: 5_000, packCount: 49, daysAgo: 11 });
    await lot({ line: 1, mean: 2_006_000, apart: 5_000, packCount: 60, counted: 121, daysAgo: 10 });
    for (const daysAgo of [9, 8, 7, 6]) await lot({ line: 1, mean: 2_006_000, apart: 5_000, daysAgo });
    const found = only(await json(1));
    expect(found.missing).toEqual({ why: 'few-lots', usedCount: 4, missingCount: 1 });
    expect(found.advised).toBeNull();
    expect(found.lots.map(({ leftOut }) => leftOut)).toEqual([
      ...[null, null, null, null, 'mostly-unweighed', 'few-packs', 'not-weighed'],
    ]);
    expect(await page(1)).toContain('half of the counted ones, to see how lots drift; there are 4. Weigh 1 more run.');
    expect(await page(1)).not.toContain('Set the mean to');
    expect(await page(1, '', spaniard)).toContain('hay 4. Pesar 1 corrida más.');
  });

  it('advises a setpoint as a sum of what the lots and the weigher’s record say', async () => {
    const means = [2_006_000, 2_007_000, 2_005_000, 2_006_500, 2_005_500];
    for (const [place, mean] of means.entries()) await lot({ mean, apart: 5_000, daysAgo: 10 - place });
    const found = only(await json(0));
    expect(found.missing).toBeNull();
    const { advised, present, variation } = found;
    // s of a lot: √(100·5²/99) g. Lots' means: s² 0.625 g², less 25.25/100 of sampling: drift √0.372 g.
    expect(variation?.sigmaMilligrams).toBeCloseTo(Math.sqrt(2_500_000_000 / 99), 6);
    expect(variation?.driftSigmaMilligrams).toBeCloseTo(Math.sqrt(625_000 - 2_500_000_000 / 99 / 100), 6);
    expect(advised).toMatchObject({ ruleSet: 'eu-76-211', lowest: { binds: 'mean', milligrams: nominalMilligrams } });
    expect(advised?.asked).toMatchObject({
      ...{ scaleLimitMilligrams: 500, stepMilligrams: 200, tareLimitMilligrams: 0, riskPerLot: 0.05 },
      setByPackCount: null,
    });
    // 2000 g + 1.6449 · 0.6104 g + 0.5 g = 2001.504 g, to the next 0.2 g.
    expect(advised?.setpointMilligrams).toBe(2_001_600);
    expect(sumOf(found)).toBeCloseTo(2_001_600, 6);
    // 500 packs in 10 days: 1500 in 30, each 6 g over the nominal quantity and 4.4 g over the advice.
    expect(present?.packsPerMonth).toBeCloseTo(1500, 6);
    expect(advised?.monthlyChange).toMatchObject({ savedMoney: null, givenAwayMoney: null, currency: null });
    expect(advised?.monthlyChange.givenAwayKilograms).toBeCloseTo(9, 6);
    expect(advised?.monthlyChange.savedKilograms).toBeCloseTo(6.6, 6);

    const said = await page(0);
    expect(said).toContain('Set the mean to 2 001.60 g, as this line’s own scale and tare show it.');
    expect(said).toContain('gives away 9 kg net a month; this setting would save 7 kg.');
    expect(said).toContain('The limit of the scale’s error is that of pack weigher W-A, 0.50 g');
    expect(said).toContain('No limit of the tare is entered');
    expect(said).toContain('that counts as drift and raises the advice');
    expect(said).toContain('50 counted packs of this format a day, so 1 500 in 30 days.');
    expect(said).toContain('An inspector judges by the law of the country where the packs are sold');
    expect(said).toContain('100 100 – 2 005.50 5.03 0.55 yes');
    expect(said).toContain('Nobody recorded what the line is set to for this format.');
    expect(said).toContain('whose setpoint was recorded and left alone, there are 0. So 2 001.60 g is a mean net');
    expect(said).not.toContain('Take over');
    expect(said).not.toContain('worth');
  });

  it('reckons with what is entered, in money too where a price is', async () => {
    const query = '?pricePerKilogram=0,5&tareLimitGrams=0.3&fillerStepGrams=1&setByPackCount=25&riskPercent=10';
    const found = only(await json(0, query));
    expect(found.advised?.asked).toMatchObject({
      ...{ tareLimitMilligrams: 300, stepMilligrams: 1000, setByPackCount: 25, riskPerLot: 0.1 },
    });
    expect(found.advised?.setpointMilligrams).toBe(2_003_000);
    expect(found.advised?.monthlyChange.givenAwayMoney).toBeCloseTo(4.5, 6);
    expect(await page(0, query)).toContain(
      'gives away 9 kg net a month, worth 5; this setting would save 5 kg, worth 2.',
    );
    const euros = `${query}&currency=eur`;
    expect(await page(0, euros)).toContain('worth 5 EUR; this setting would save 5 kg, worth 2 EUR.');
    expect(only(await json(0, euros)).advised?.monthlyChange).toMatchObject({ currency: 'EUR' });
    expect((await auditor.get(`/lines/${plant.lineIds[0]}/fill?currency=EURO`)).status).toBe(422);
    expect((await auditor.get(`/lines/${plant.lineIds[0]}/fill?riskPercent=60`)).status).toBe(422);
    expect((await auditor.get(`/lines/${plant.lineIds[0]}/fill?market=mars`)).status).toBe(422);
  });

  it('goes by the strictest law of the market, and advises nothing where a law counts otherwise', async () => {
    expect(only(await json(0, '?market=de')).advised).toMatchObject({ asked: { rules: { shareBeyondT1: 0.02 } } });
    const american = only(await json(0, '?market=us'));
    expect(american).toMatchObject({ advised: null, missing: { why: 'other-rules', ruleSet: 'us-handbook-133' } });
    expect(await page(0, '?market=us')).toContain('Nothing is advised: NIST Handbook 133 does not ask for a mean and');
    expect(await page(0, '', spaniard)).toContain('Ajustar la media a 2 001.60 g');
  });

  it('never advises less than the nominal quantity, however little a line varies, and raises one that is short', async () => {
    const { id } = await house.get(AddPackFormat).execute(asking(plant.actor), {
      ...{ code: 'WS-5KG', name: 'White sugar 5 kg', gtin: '9520123000509', nominalGrams: 5_000 },
      ...{ packTareGrams: 40, packsPerPallet: 100, palletTareGrams: 25_000, codePattern: 'L{y}{ddd}{line}{shift}' },
      ...{ assumedLowerMilligrams: 4_980_000, assumedUpperMilligrams: 5_050_000, gradeIds: [plant.gradeId] },
    });
    const short = { formatId: id, nominal: 5_000_000, mean: 4_998_000 };
    for (const daysAgo of [5, 4, 3, 2, 1]) await lot({ ...short, apart: 1, daysAgo });
    const found = (await json(0)).formats;
    expect(found.map(({ formatCode }) => formatCode)[0]).toBe('WS-5KG');
    // The nominal quantity, and the limit of the scale.
    expect(found[0]?.advised?.setpointMilligrams).toBeGreaterThanOrEqual(5_000_500);
    expect(found[0]?.advised?.monthlyChange.givenAwayKilograms).toBeLessThan(0);
    expect(await page(0)).toContain('less a month than they say; this setting takes');
    for (let count = 0; count < 20; count += 1) await lot({ ...short, apart: 0, daysAgo: 0.9 - count / 100 });
    expect((await json(0)).formats[0]).toMatchObject({ advised: null, missing: { why: 'no-spread' } });
    expect((await json(0)).formats[0]?.lots).toHaveLength(20);
  });

  it('is reached from a run’s weights and from the plant, and only by its own site', async () => {
    const { formats } = await json(0);
    const runId = formats[0]?.lots[0]?.runId ?? '';
    const href = `href="/lines/${plant.lineIds[0]}/fill"`;
    expect((await auditor.get(`/runs/${runId}/weights`)).text).toContain(href);
    expect((await auditor.get('/plant')).text).toContain(href);
    const other = await aPlant(house, { siteCode: 'OTHER' });
    const stranger = await signedIn(house, await aPerson(house, other.siteId));
    expect((await stranger.get(`/lines/${plant.lineIds[0]}/fill`)).status).toBe(404);
    expect((await stranger.get(`/api/lines/${plant.lineIds[0]}/fill`)).status).toBe(404);
  });

  it('takes drift about the recorded settings, and says what the filler is to show for the advised mean', async () => {
    const own = await aPlant(house, { siteCode: 'SETTINGS' });
    const weigher = await aPackWeigher(house, own, { code: 'W-S' });
    const lead = await signedIn(house, await aPerson(house, own.siteId, { roles: ['line-lead'] }));
    const path = `/lines/${own.lineIds[0]}/fill`;
    const found = async (): Promise<FormatJson> => only((await lead.get(`/api${path}`)).body as LineFillJson);
    const set = (setpointGrams: string, at: Instant) => {
      house.clock.set(at);
      const form = { formatId: own.formatId, setpointGrams, reason: 'Mean of the hour' };
      return house.get(ChangeSetting).execute(asking(own.actor), own.lineIds[0], form);
    };
    // The filler gives 1.5 g more than it shows, in each lot a little otherwise; the setting is changed by 4 g halfway.
    const lots = [
      ...[1.3, 1.7, 1.5].map((offset) => ({ setpoint: 2_004, offset })),
      ...[1.4, 1.6, 1.5].map((offset) => ({ setpoint: 2_008, offset })),
    ];
    for (const [place, { setpoint, offset }] of lots.entries()) {
      const startedAt = shifted(endAt, (place - 20) * dayMilliseconds);
      if (setpoint !== lots[place - 1]?.setpoint) await set(String(setpoint), shifted(startedAt, -60_000));
      const at = Math.floor(Date.parse(startedAt) / 10);
      const rows = Array.from({ length: 100 }, (_, pack) => ({
        ...{ sequence: pack + 1, at: at + pack, isRejected: false },
        net: (setpoint + offset) * 1000 + (pack % 2 === 0 ? 5000 : -5000),
      }));
      house.clock.set(startedAt);
      const { runId } = await aRun(house, own, { startedAt });
      const added = { runId, weigherId: weigher.weigherId, series: runId, nominalMilligrams, columns: weightsOf(rows) };
      await house.get(UnitOfWork).run((tx) => addToSummaries(tx, [added]));
      house.clock.set(shifted(startedAt, 600_000));
      await house.get(CloseRun).execute(asking(own.actor), runId, { packCount: 100, loosePackCount: 0 });
    }
    house.clock.set(endAt);
    const known = await found();
    expect(known.lots.map(({ setpointMilligrams }) => setpointMilligrams)).toEqual([
      ...[2_008_000, 2_008_000, 2_008_000, 2_004_000, 2_004_000, 2_004_000],
    ]);
    expect(known.offset).toMatchObject({ lotCount: 6, leastMilligrams: 1300, mostMilligrams: 1700 });
    expect(known.offset?.meanMilligrams).toBeCloseTo(1500, 6);
    // The lots lie 4 g apart by their settings, and hardly about them: sampling alone explains that.
    expect(known.variation).toMatchObject({ driftFrom: 'settings', driftSigmaMilligrams: 0 });
    expect(known.advised?.setpointMilligrams).toBe(2_000_600);
    // 2000.6 g − 1.5 g = 1999.1 g, to the next 0.2 g.
    expect(known.advised?.fillerSetpointMilligrams).toBe(1_999_200);
    expect(known.setting.setpoint).toMatchObject({ milligrams: 2_008_000 });
    const page = await lead.get(path);
    expect(page.text).toContain(`/lines/${own.lineIds[0]}/settings?formatId=${own.formatId}&amp;setpointGrams=1999.2`);
    const said = pageText(page.text);
    expect(said).toContain('Set now, as last recorded: setpoint 2 008.00 g.');
    expect(said).toContain('In 6 lots the mean net lay on average 1.50 g above the setpoint (from 1.30 to 1.70 g)');
    expect(said).toContain('For the advised mean of 2 000.60 g set the filler to 1 999.20 g.');
    expect(said).toContain('Take over the advised: 1 999.20 g');
    expect(said).toContain('so changes of setting are no part of it');

    // Two lots in which the setting was changed tell nothing of the distance: four are too few.
    for (const place of [0, 5]) await set('2006', shifted(endAt, (place - 20) * dayMilliseconds + 300_000));
    house.clock.set(endAt);
    const fewer = await found();
    expect(fewer.lots.map(({ setpointMilligrams }) => setpointMilligrams)).toEqual([
      ...[null, 2_008_000, 2_008_000, 2_006_000, 2_006_000, null],
    ]);
    expect(fewer).toMatchObject({ knownLotCount: 4, offset: null, variation: { driftFrom: 'means' } });
    expect(fewer.advised).toMatchObject({ fillerSetpointMilligrams: null });
    expect(fewer.variation?.driftSigmaMilligrams).toBeGreaterThan(1500);
    const unknown = pageText((await lead.get(path)).text);
    expect(unknown).toContain('there are 4. So');
    expect(unknown).not.toContain('set the filler to');

    // Sold in the EU and the USA at a price: both by default, and what no setpoint can be reckoned from is named.
    const sold = (markets: ('eu' | 'us')[], pricePerKilogram: string | null) => {
      house.clock.pass(1);
      const form = { formatId: own.formatId, markets, pricePerKilogram, currency: pricePerKilogram && 'GBP' };
      return house.get(SetFormatSale).execute(asking(own.actor), form);
    };
    await sold(['eu', 'us'], '0.5');
    const priced = await found();
    expect(priced).toMatchObject({ markets: ['eu', 'us'], advised: { ruleSet: 'eu-76-211', leftOutMarkets: ['us'] } });
    const { givenAwayKilograms, givenAwayMoney } = priced.advised!.monthlyChange;
    expect(givenAwayMoney).toBeCloseTo(givenAwayKilograms / 2, 9);
    expect(priced.advised!.monthlyChange).toMatchObject({ currency: 'GBP' });
    expect(pageText((await lead.get(path)).text)).toContain('United States: the format is sold there too');
    const german = only((await lead.get(`/api${path}?market=de&pricePerKilogram=2`)).body as LineFillJson);
    expect(german).toMatchObject({ markets: ['de'], advised: { leftOutMarkets: [] } });
    expect(german.advised?.monthlyChange.givenAwayMoney).toBeCloseTo(givenAwayKilograms * 2, 9);
    // A price that is entered is not in the currency of the one that is set up.
    expect(german.advised?.monthlyChange).toMatchObject({ currency: null });
    await sold(['us'], null);
    expect(await found()).toMatchObject({ advised: null, missing: { why: 'other-rules', ruleSet: 'us-handbook-133' } });
  });
});
