import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { joinWeights, type WeightColumns } from '../src/core/weight-blocks/weight-columns.js';
import { storedWeights } from '../src/fill-weight/stored-weights.js';
import { READER, type ReadFrom } from '../src/platform/database/reading.js';
import { aPackWeigher, type TestWeigher } from './support/a-pack-weigher.js';
import { aPlant, type Plant } from './support/a-plant.js';
import { aRun } from './support/a-run.js';
import { openHouse, type TestHouse } from './support/house.js';

const packsPerLine = 40_000;
const linesPerBatch = 500;

/** Numbers that look random and are the same each time (the multiplier of MINSTD, Park and Miller 1988). */
function numbersFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

/** A weigher's day: a pack every 0.7 s, filled by 14 heads, the light ones pushed out. */
function dayOf(line: number, run: string): string[] {
  const random = numbersFrom(line + 1);
  const from = Date.parse('2026-03-12T06:00:00.000Z');
  return Array.from({ length: packsPerLine }, (_, place) => {
    const netMilligrams = Math.round((2_002_000 + (random() + random() + random() - 1.5) * 12_000) / 200) * 200;
    const at = new Date(from + place * 700).toISOString();
    const rejected = netMilligrams < 1_988_000;
    return JSON.stringify({ sequence: place + 1, at, netMilligrams, head: place % 14, rejected, run });
  });
}

/** The day as a bad network brings it: batches lost and sent later, sent twice, overlapping, lines in any order. */
function throughBadNetwork(day: readonly string[], seed: number): string[] {
  const random = numbersFrom(seed);
  const sent: string[] = [];
  const late: string[] = [];
  for (let start = 0; start < day.length; start += linesPerBatch) {
    const overlap = random() < 0.2 ? Math.floor(random() * 300) : 0;
    const lines = day.slice(Math.max(0, start - overlap), start + linesPerBatch);
    if (random() < 0.3) lines.sort(() => random() - 0.5);
    const batch = lines.join('\n');
    if (random() < 0.15) late.push(batch);
    else sent.push(batch);
    if (random() < 0.2) sent.push(batch);
    if (late.length > 0 && random() < 0.1) sent.push(late.pop() ?? '');
  }
  return [...sent, ...late.reverse()];
}

describe('the weigher’s day', () => {
  let house: TestHouse;
  let plant: Plant;

  beforeAll(async () => {
    house = await openHouse();
    plant = await aPlant(house);
  });
  afterAll(async () => {
    await house.close();
  });

  async function send(weigher: TestWeigher, payload: string): Promise<number> {
    const answer = await house.app
      .getHttpAdapter()
      .getInstance()
      .inject({
        method: 'POST',
        url: '/api/fill-weights',
        headers: { authorization: `Bearer ${weigher.token}`, 'content-type': 'application/x-ndjson' },
        payload,
      });
    expect(answer.statusCode).toBe(201);
    return (JSON.parse(answer.body) as { acceptedCount: number }).acceptedCount;
  }

  async function kept({ deviceId }: TestWeigher): Promise<WeightColumns> {
    const parts: WeightColumns[] = [];
    const reader = house.app.get<ReadFrom>(READER, { strict: false });
    const all = { from: 0, to: Number.MAX_SAFE_INTEGER };
    for await (const { columns } of storedWeights(reader, { deviceId, series: '1' }, all)) parts.push(columns);
    return joinWeights(parts);
  }

  /** The sums of the run and of its hours, as they stand in their rows. */
  async function summaries({ weigherId }: TestWeigher): Promise<unknown> {
    const reader = house.app.get<ReadFrom>(READER, { strict: false });
    const runs = await reader.sql<object>`SELECT * FROM "weight_run" WHERE "weigher_id" = ${weigherId}`;
    const hours = await reader.sql<object>`
      SELECT * FROM "weight_hour" WHERE "weigher_id" = ${weigherId} ORDER BY "hour_at"`;
    return [...runs, ...hours].map((row) => ({ ...row, weigher_id: '' }));
  }

  it('leaves the same weights and sums, bit for bit, whether the network is good or loses, repeats and shuffles', async () => {
    for (const [line, lineId] of plant.lineIds.entries()) {
      const { number: run } = await aRun(house, plant, { lineId, startedAt: '2026-03-12T06:00:00.000Z' });
      const [steady, tossed] = [
        await aPackWeigher(house, plant, { lineId }),
        await aPackWeigher(house, plant, { lineId }),
      ];
      house.clock.set('2026-03-12T18:00:00.000Z');
      const day = dayOf(line, run);
      expect(await send(steady, day.join('\n'))).toBe(packsPerLine);
      const batches = throughBadNetwork(day, line + 11);
      expect(batches.length).toBeGreaterThan(packsPerLine / linesPerBatch);
      let accepted = 0;
      for (const batch of batches) accepted += await send(tossed, batch);
      expect(accepted).toBe(packsPerLine);
      const clean = await kept(steady);
      expect(clean.count).toBe(packsPerLine);
      expect(clean.isRejected?.includes(1)).toBe(true);
      expect(await kept(tossed)).toEqual(clean);
      const sums = await summaries(steady);
      expect(sums).toHaveLength(1 + 8);
      expect(await summaries(tossed)).toEqual(sums);
    }
  }, 300_000);
});
