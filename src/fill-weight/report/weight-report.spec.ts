import { writeFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { aPackWeigher } from '../../../test/support/a-pack-weigher.js';
import { aPerson, signedIn, type SignedInPerson } from '../../../test/support/a-person.js';
import { aPlant, type Plant } from '../../../test/support/a-plant.js';
import { aRun } from '../../../test/support/a-run.js';
import { asking, openHouse, type TestHouse } from '../../../test/support/house.js';
import { filledPacks, keepPacks } from '../../../test/support/kept-packs.js';
import { pageAsPng, pageCount, strokesOf, textOf } from '../../../test/support/read-pdf.js';
import { CloseRun } from '../../packing/close-run.js';
import { shifted } from '../../platform/clock.js';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { Papers } from '../../platform/printing/papers.js';
import { SetPaperLanguage } from '../../plant/set-paper-language.js';
import { CorrectTare } from '../kept/correct-tare.js';
import { SealWeights } from '../kept/seal-weights.js';
import { WithdrawTareCorrection } from '../kept/withdraw-tare-correction.js';

const firstDay = '2026-03-12T06:00:00.000Z';
const nominalMilligrams = 2_000_000;

describe('the report of a run’s fill weights for an inspector', () => {
  let house: TestHouse;
  let plant: Plant;
  let officer: SignedInPerson;
  let auditor: SignedInPerson;
  let weigherId: string;
  let runCount = 0;

  beforeAll(async () => {
    house = await openHouse();
    house.clock.set(firstDay);
    plant = await aPlant(house);
    ({ weigherId } = await aPackWeigher(house, plant, { headCount: 2 }));
  });
  afterAll(() => house.close());

  /** 4800 packs in four hours; one of them of 1930 g, beyond T2 (1940 g). */
  async function aWeighedRun({
    everyMilliseconds = 3000,
    meanOf = () => 2_005_000,
  }: {
    everyMilliseconds?: number;
    meanOf?: (place: number) => number;
  } = {}): Promise<{ runId: string; number: string; series: string }> {
    const startedAt = shifted(firstDay, runCount * 86_400_000);
    runCount += 1;
    house.clock.set(startedAt);
    const run = await aRun(house, plant, { startedAt });
    const columns = filledPacks({
      ...{ packCount: 4800, firstAt: startedAt, everyMilliseconds, heads: 2, deviationMilligrams: 5000 },
      meanOf,
    });
    columns.netMilligrams[1000] = 1_930_000;
    const series = String(runCount);
    await keepPacks(house, { runId: run.runId, weigherId, nominalMilligrams, series }, columns);
    house.clock.set(shifted(startedAt, 4800 * everyMilliseconds));
    officer = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['quality-officer'] }));
    auditor = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['auditor'] }));
    return { ...run, series };
  }

  const closed = (runId: string) =>
    house.get(CloseRun).execute(asking(plant.actor), runId, { packCount: 4900, loosePackCount: 0 });

  async function issued(runId: string): Promise<{ pdf: Buffer; text: string }> {
    const answer = await officer.post(`/api/runs/${runId}/weights/report`);
    expect(answer.status).toBe(201);
    const { paperId } = answer.body as { paperId: string };
    const file = await auditor.get(`/papers/${paperId}/file`).responseType('blob');
    expect(file.status).toBe(200);
    const pdf = file.body as Buffer;
    return { pdf, text: textOf(pdf).replaceAll(/\s+/g, ' ') };
  }

  it('is drawn once, whoever asks for it while it is drawn', async () => {
    const { runId } = await aWeighedRun();
    await closed(runId);
    const { paperId } = (await officer.post(`/api/runs/${runId}/weights/report`)).body as { paperId: string };
    const papers = house.get(Papers);
    const [first, ...others] = await Promise.all([
      papers.fileOf(paperId),
      papers.render(paperId).then(() => papers.fileOf(paperId)),
      papers.fileOf(paperId),
    ]);
    expect(others).toEqual([first, first]);
  });

  /** For who wants to look at it. */
  function picture(pdf: Buffer, name: string): void {
    const folder = process.env['REPORT_PICTURES'];
    for (let page = 0; folder !== undefined && page < pageCount(pdf); page += 1) {
      writeFileSync(`${folder}/${name}-${page}.png`, pageAsPng(pdf, page, 80));
    }
  }

  it('says what was packed and weighed, how it is judged here and in the USA, and names the pack that is short', async () => {
    const { runId, number } = await aWeighedRun();
    await closed(runId);
    const { pdf, text } = await issued(runId);
    picture(pdf, 'report');
    expect(text).toContain(number);
    expect(text).toContain('European Union: the 4 800 packs that were weighed do not keep: Packs beyond T2');
    expect(text).toContain('Packed by: Alder Quay, GLN 9520123000011');
    expect(text).toContain('White sugar 2 kg, GTIN 09520123000103, nominal quantity 2 000 g');
    expect(text).toContain('Tare: 12 g');
    // A fifth of the tolerable negative error of 30 g; a sixth of the variation of 54 g.
    expect(text).toMatch(/\(EU, UK\): good enough, 0\.50 g against 6\.00 g/);
    expect(text).toMatch(/Handbook 133\): good enough, 0\.20 g against 9\.00 g/);
    expect(text).toContain('Counted packs 4 900');
    expect(text).toContain('Not weighed 100');
    expect(text).toContain('European Union: not kept: Packs beyond T2');
    for (const rule of ['Mean: kept', 'Packs beyond T1: kept', 'Packs beyond T2: broken']) expect(text).toContain(rule);
    expect(text).toContain('1 of 4 800 is below 1 940 g; none may be.');
    expect(text).toContain('Directive 76/211/EEC, Annex I 1.3');
    expect(text).toContain('Written down from memory');
    expect(text).toContain('United States: not kept: Packs beyond the maximum allowable variation');
    expect(text).toContain('1 of 4 800 is below 1 946 g; none may be.');
    expect(text).toMatch(/Accepted packs beyond T2.*1 001 1 1 930\.0/);
    expect(text).toMatch(/T2 1 940\.0 g T1 1 970\.0 g nominal 2 000\.0 g/);
    expect(text).toContain('United Kingdom: not kept: Packs beyond T2');
    expect(text).toContain('Canada: not every rule could be judged');
    expect(text).toContain('Tares that were corrected later None.');
    expect(text).toContain('What counts is the text in force where the packs are sold.');
    const page = await officer.get(`/runs/${runId}/weights`);
    expect(page.text).toContain(`action="/runs/${runId}/weights/report"`);
    expect(page.text).toMatch(/href="\/papers\/[0-9a-f-]+\/file"/);
  });

  it('says late corrections, those taken back too, and what is damaged', async () => {
    const { runId, series } = await aWeighedRun();
    const range = { runId, weigherId, series, fromSequence: 1, toSequence: 2400 };
    const wrong = await house
      .get(CorrectTare)
      .execute(asking(plant.actor), { ...range, addedMilligrams: -900, reason: 'Guessed' });
    await house.get(WithdrawTareCorrection).execute(asking(plant.actor), wrong.id, { reason: 'Not so' });
    await house
      .get(CorrectTare)
      .execute(asking(plant.actor), { ...range, addedMilligrams: -1200, reason: 'Heavier pouches' });
    await closed(runId);
    await house.get(SealWeights).look();
    const [block] = await house.get(UnitOfWork).run(async (tx) => {
      const rows = await tx.sql<{ id: string }>`
        SELECT "id" FROM "weight_block" WHERE "run_id" = ${runId} ORDER BY "first_sequence" LIMIT 1`;
      await tx.sql`UPDATE "weight_block" SET "weights" = ${Buffer.from('not what was written')} WHERE "id" = ${rows[0]?.id}`;
      return rows;
    });
    const { text } = await issued(runId);
    expect(text).toMatch(/−0\.90 g was added to each net of sequences 1 to 2 400, 2 400 packs, and taken back since/);
    expect(text).toMatch(/−1\.20 g added to each net of sequences 1 to 2 400, 2 400 packs\. Reason: Heavier pouches/);
    expect(text).toContain('worked out anew from the corrected nets');
    expect(text).toContain('single weights are damaged');
    expect(text.replaceAll(' ', '')).toContain(block?.id);
  });

  it('draws the means of the hours: limits of control thin and dashed, the law’s line alone thick', async () => {
    // Twenty hours of 240 packs; in the sixteenth somebody turned the filler up.
    const meanOf = (place: number): number => (place >= 3600 && place < 3840 ? 2_012_000 : 2_004_000);
    const { runId } = await aWeighedRun({ everyMilliseconds: 15_000, meanOf });
    await closed(runId);
    const { pdf, text } = await issued(runId);
    picture(pdf, 'hours');
    expect(text).toMatch(/Means by the hour and control limits nominal 2 000\.0 g upper limit 2 00\d\.\d\d g/);
    expect(text).toMatch(
      /Means of 20 hours about 2 004\.\d\d g, nominal 2 000\.0 g: 1 beyond the control limits, [1-9]/,
    );
    expect(text).toMatch(/Mar 2026, \d\d:00: one beyond 3 sigma \(Western Electric 1\)\. Ask what changed/);
    const lines = strokesOf(pdf);
    const dashed = lines.filter(({ isDashed }) => isDashed);
    expect(dashed).toHaveLength(2);
    for (const { widthMm } of dashed) expect(widthMm).toBeLessThan(0.3);
    // T1, T2 and nominal in the histogram, nominal among the hours.
    expect(lines.filter(({ widthMm }) => widthMm > 0.5)).toHaveLength(4);
  });

  it('speaks the language of the site’s papers, stays as it was issued, and is asked for on the page', async () => {
    const { runId, number } = await aWeighedRun();
    await house.get(SetPaperLanguage).forSite(asking(plant.actor), { paperLanguage: 'es' });
    const sent = await officer.send(`/runs/${runId}/weights/report`, {});
    expect(sent.status).toBe(303);
    const address = String(sent.headers['location']);
    expect(address).toMatch(/^\/papers\/.+\/file$/);
    const read = async () =>
      textOf((await officer.get(address).responseType('blob')).body as Buffer).replaceAll(/\s+/g, ' ');
    const before = await read();
    expect(before).toContain('Unión Europea: 4 800 paquetes pesados no cumplen');
    expect(before).toContain('T2 1 940,0 g');
    expect(before).toContain('La corrida estaba abierta cuando se emitió');
    await closed(runId);
    expect(await read()).toBe(before);
    expect(before).toContain(number);
    expect((await auditor.get(`/runs/${runId}/weights`)).text).not.toContain('/weights/report');
    expect((await auditor.post(`/api/runs/${runId}/weights/report`)).status).toBe(403);
    const other = await aPlant(house, { siteCode: 'OTHER' });
    const stranger = await signedIn(house, await aPerson(house, other.siteId, { roles: ['quality-officer'] }));
    expect((await stranger.post(`/api/runs/${runId}/weights/report`)).status).toBe(404);
  });
});
