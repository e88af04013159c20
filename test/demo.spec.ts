import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import request from 'supertest';
import { demoPeople } from '../src/demo/set-up/demo-people.js';
import { trueGramsIn, type TruthCell } from '../src/demo/truth.js';
import { boundsOfBags } from '../src/hopper/hopper-links.js';
import { verifyJournal } from '../src/journal/verify-journal.js';
import { aDemo, headAfterHours, type DemoHouse } from './support/a-demo.js';

let demo: DemoHouse;

beforeAll(async () => {
  demo = await aDemo({ days: 2, seed: 1, size: 'usual' });
}, 300_000);

afterAll(async () => {
  await demo.close();
});

function grouped<Row>(rows: readonly Row[], nameOf: (row: Row) => string): ReadonlyMap<string, readonly Row[]> {
  const groups = new Map<string, Row[]>();
  for (const row of rows) groups.set(nameOf(row), [...(groups.get(nameOf(row)) ?? []), row]);
  return groups;
}

/** All bags that the house knows, tipped or not. */
async function bagIds(): Promise<string[]> {
  const rows = await demo.from.sql<{ id: string }>`SELECT "id" FROM "bulk_bag" ORDER BY "id"`;
  return rows.map(({ id }) => id);
}

describe('the truth of the demo', () => {
  it('holds every way in which a tip gets into the records', () => {
    const ways = new Set(demo.truth.pours.map(({ recorded }) => recorded));
    expect([...ways].sort()).toEqual(['after-the-account', 'at-once', 'corrected', 'late', 'one-of-several']);
  });

  it('ends with a vehicle that is half loaded, and with a hold on minutes of a run that nobody has classed', async () => {
    const loaded = await demo.from.sql<{ deliveryId: string; status: string; units: number | string }>`
      SELECT l."delivery_id" AS "deliveryId", s."status", COUNT(*) AS "units" FROM "loading" l
      JOIN "delivery_state" s ON s."delivery_id" = l."delivery_id"
      JOIN "pallet_state" p ON p."pallet_id" = l."pallet_id" AND p."place_id" = l."delivery_id"
      WHERE s."status" = 'loading' AND p."status" = 'loaded' GROUP BY l."delivery_id", s."status"`;
    expect(loaded.map(({ units }) => Number(units))).toEqual([5]);
    const deliveryId = loaded[0]?.deliveryId ?? '';
    const [line] = await demo.from.sql<{ ordered: number | string; perPallet: number | string }>`
      SELECT o."ordered_count" AS "ordered", f."packs_per_pallet" AS "perPallet" FROM "delivery_line" o
      JOIN "pack_format" f ON f."id" = o."format_id" WHERE o."delivery_id" = ${deliveryId}`;
    expect(Number(line?.ordered) / Number(line?.perPallet)).toBe(10);
    const holds = await demo.from.sql<{ fromAt: string; untilAt: string }>`
      SELECT h."from_at" AS "fromAt", h."until_at" AS "untilAt" FROM "hold" h
      LEFT JOIN "hold_lift" f ON f."hold_id" = h."id" LEFT JOIN "hold_class" c ON c."hold_id" = h."id"
      WHERE h."scope_kind" = 'packing-run' AND h."from_at" IS NOT NULL AND f."id" IS NULL AND c."id" IS NULL`;
    expect(holds).toHaveLength(1);
  });

  it('lies between least and most for every bag in every pallet', async () => {
    const ids = await bagIds();
    const { pallets } = demo.truth;
    const bounds = await boundsOfBags(
      demo.from,
      ids,
      pallets.map(({ runId, fromCount, toCount }) => [{ runId, fromCount, toCount }]),
    );
    const seen = { possible: 0, ruledOut: 0 };
    const wrong: unknown[] = [];
    pallets.forEach((pallet, place) => {
      const grams = trueGramsIn(demo.truth, pallet);
      for (const bagId of ids) {
        const truth = grams.get(bagId) ?? 0;
        const { leastGrams = 0, mostGrams = 0 } = bounds[place]?.byBag.get(bagId) ?? {};
        if (truth < leastGrams || truth > mostGrams) wrong.push({ ...pallet, bagId, leastGrams, truth, mostGrams });
        seen[mostGrams === 0 ? 'ruledOut' : 'possible'] += 1;
      }
    });
    expect(wrong).toEqual([]);
    // Worth something only where much is possible and much is ruled out.
    expect(seen.possible).toBeGreaterThan(1000);
    expect(seen.ruledOut).toBeGreaterThan(10_000);
  });

  it('lies between least and most for every bag in all that both lines packed in some hours', async () => {
    const ids = await bagIds();
    // Pallets stand in the order in which they were built: a dozen and a half of both lines take some four hours.
    const targets = Array.from({ length: Math.floor(demo.truth.pallets.length / 18) }, (_, place) =>
      demo.truth.pallets.slice(place * 18, place * 18 + 18),
    );
    const bounds = await boundsOfBags(demo.from, ids, targets);
    const wrong: unknown[] = [];
    let sure = 0;
    targets.forEach((target, place) => {
      const parts = target.map((range) => trueGramsIn(demo.truth, range));
      for (const bagId of ids) {
        const truth = parts.reduce((sum, part) => sum + (part.get(bagId) ?? 0), 0);
        const { leastGrams = 0, mostGrams = 0 } = bounds[place]?.byBag.get(bagId) ?? {};
        if (truth < leastGrams || truth > mostGrams) wrong.push({ place, bagId, leastGrams, truth, mostGrams });
        if (leastGrams > 0) sure += 1;
      }
    });
    expect(wrong).toEqual([]);
    // Worth something only where something is sure.
    expect(sure).toBeGreaterThan(20);
  });
});

describe('a code that was printed in the demo', () => {
  let cookie: string[];

  beforeAll(async () => {
    const auditor = demoPeople.find(({ role }) => role === 'auditor');
    const form = { proof: 'password', code: auditor?.code, password: auditor?.password };
    const answer = await request(demo.app.getHttpServer()).post('/api/sessions').send(form);
    cookie = (answer.get('Set-Cookie') ?? []).map((text) => text.split(';')[0] ?? '');
    expect(answer.status).toBeLessThan(300);
  });

  /** Packs that bear one code: in the hour that comes twice they are those of two minutes. */
  function printedAlike(): ReadonlyMap<string, readonly TruthCell[]> {
    const probes = demo.truth.cells.filter(({ printed }) => printed !== null);
    return grouped(probes, ({ printed }) => printed ?? '');
  }

  interface Answer {
    readonly thread?: { readonly sources: readonly { bagId: string; leastGrams: number; mostGrams: number }[] };
    readonly choices?: readonly { readonly meant: string; readonly subject: { readonly printedAt: string | null } }[];
  }

  async function ask(code: string, meant?: string): Promise<Answer> {
    const answer = await request(demo.app.getHttpServer())
      .get('/api/thread')
      .query(meant === undefined ? { code } : { code, meant })
      .set('Cookie', cookie);
    expect([code, answer.status]).toEqual([code, 200]);
    return answer.body as Answer;
  }

  /** Follows a code; one that the clocks showed twice for both comings, and for each by itself. */
  async function refuseWrong(code: string, cells: readonly TruthCell[]): Promise<void> {
    const { thread, choices = [] } = await ask(code);
    if (thread !== undefined) {
      refuseWrongSources(code, thread.sources, cells);
      return;
    }
    const comings = choices.filter(({ subject }) => subject.printedAt !== null);
    const any = choices.filter(({ subject }) => subject.printedAt === null);
    expect([code, comings.length, any.length]).toEqual([code, 2, 1]);
    refuseWrongSources(code, (await ask(code, any[0]?.meant)).thread?.sources ?? [], cells);
    if (cells.length !== 2) return;
    const inOrder = cells.toSorted((one, other) => one.fromAt.localeCompare(other.fromAt));
    for (const [place, { meant }] of comings.entries()) {
      refuseWrongSources(`${code} ${meant}`, (await ask(code, meant)).thread?.sources ?? [], [inOrder[place]!]);
    }
  }

  function refuseWrongSources(
    code: string,
    sources: readonly { bagId: string; leastGrams: number; mostGrams: number }[],
    cells: readonly TruthCell[],
  ): void {
    const grams = new Map<string, number>();
    for (const cell of cells) {
      for (const [bagId, part] of Object.entries(cell.grams)) grams.set(bagId, (grams.get(bagId) ?? 0) + part);
    }
    const tooMuch = [...grams].filter(([bagId, truth]) => {
      return truth > (sources.find((source) => source.bagId === bagId)?.mostGrams ?? 0);
    });
    const tooLittle = sources.filter(({ bagId, leastGrams }) => leastGrams > (grams.get(bagId) ?? 0));
    expect([code, tooMuch, tooLittle]).toEqual([code, [], []]);
  }

  it('leads to the bags that were truly in the pack', async () => {
    const codes = [...printedAlike()].filter((_, place) => place % 9 === 0);
    expect(codes.length).toBeGreaterThan(10);
    for (const [code, cells] of codes) await refuseWrong(code, cells);
  });

  it('leads there too while a coder was an hour off, and in the hour that came twice', async () => {
    const from = '2026-10-25T00:00:00.000Z';
    const codes = [...printedAlike()].filter(([, cells]) =>
      cells.some(({ fromAt }) => from <= fromAt && fromAt < '2026-10-25T05:30'),
    );
    expect(codes.some(([, cells]) => cells.length === 2)).toBe(true);
    for (const [code, cells] of codes) await refuseWrong(code, cells);
  });
});

describe('the accounts of the demo', () => {
  interface SignedRow {
    readonly number: string;
    readonly fromAt: string;
    readonly untilAt: string;
    readonly lines: string;
    readonly inGrams: number | string;
    readonly outGrams: number | string;
    readonly differenceGrams: number | string | null;
    readonly standardUncertaintyGrams: number | string | null;
    readonly verdict: string;
  }

  const accounts = (): Promise<SignedRow[]> => demo.from.sql<SignedRow>`
    SELECT "number", "from_at" AS "fromAt", "until_at" AS "untilAt", "lines", "in_grams" AS "inGrams",
      "out_grams" AS "outGrams", "difference_grams" AS "differenceGrams",
      "standard_uncertainty_grams" AS "standardUncertaintyGrams", "verdict"
    FROM "account" WHERE "voided_by" IS NULL ORDER BY "until_at"`;

  const skipped = () => demo.truth.pours.find(({ recorded }) => recorded === 'after-the-account');
  const hasSkippedTip = ({ fromAt, untilAt }: SignedRow): boolean => {
    const at = skipped()?.at ?? '';
    return fromAt <= at && at < untilAt;
  };

  it('add up to the gram, each with a difference that its scales explain', async () => {
    const good = (await accounts()).filter((account) => !hasSkippedTip(account));
    expect(good.length).toBeGreaterThan(3);
    for (const { number, verdict, inGrams, outGrams, differenceGrams, standardUncertaintyGrams } of good) {
      const difference = Number(differenceGrams);
      expect([number, verdict]).toEqual([number, 'closes']);
      expect(Number(inGrams)).toBe(Number(outGrams) + difference);
      expect(difference).not.toBe(0);
      expect(Math.abs(difference)).toBeLessThanOrEqual(2 * Number(standardUncertaintyGrams));
    }
  });

  it('do not close where a tip was skipped, and say so', async () => {
    const [account, ...others] = (await accounts()).filter(hasSkippedTip);
    expect([account?.verdict, others]).toEqual(['does-not-close', []]);
    const difference = Number(account?.differenceGrams);
    // More came out than went in, by about the bag that nobody recorded.
    expect(Number(account?.inGrams)).toBe(Number(account?.outGrams) + difference);
    expect(Math.abs(difference + (skipped()?.grams ?? 0))).toBeLessThan(2 * Number(account?.standardUncertaintyGrams));
    const points = await demo.from.sql<{ cause: string }>`
      SELECT "cause" FROM "open_point" WHERE "cause" = 'account-does-not-close'`;
    expect(points).toHaveLength(1);
  });
});

describe('the records of the demo', () => {
  it('stand in an unbroken journal', async () => {
    const verified = await verifyJournal(demo.from, demo.truth.siteId, null);
    expect(verified.misfit).toBeNull();
    expect(verified.entries).toBeGreaterThan(2500);
  });

  it('are the same to the last hash for the same seed', async () => {
    const heads = [await headAfterHours(7, 2), await headAfterHours(7, 2)];
    expect(heads[0]).toMatch(/^[0-9a-f]{64}$/);
    expect(heads[1]).toBe(heads[0]);
  }, 120_000);
});
