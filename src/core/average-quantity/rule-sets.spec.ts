import { describe, expect, it } from '@jest/globals';
import { describeWithChecks, readChecks } from '../../../test/support/checks.js';
import { planRowFor } from './plan-row.js';
import type { Market, RuleSetId } from './rule-set.js';
import { ruleSetOf, ruleSets, ruleSetsInScope } from './rule-sets.js';
import type { PlanKind, SamplePlan } from './sample-plan.js';

const idsIn = (grams: number, market: Market): readonly string[] =>
  ruleSetsInScope(Math.round(grams * 1000), market).ruleSets.map(({ id }) => id);
const outsideOf = (grams: number, market: Market) => ruleSetsInScope(Math.round(grams * 1000), market).outside;
const planOf = (id: RuleSetId, kind: PlanKind): SamplePlan => ruleSetOf(id).plans.find((plan) => plan.kind === kind)!;

describe('which rules apply to a pack', () => {
  // Directive 76/211/EEC Article 1 (5 g to 10 kg); GOV.UK, Packaged goods (to 25 kg); Australian reg. 4.36(4) (to 50 kg).
  it.each<[number, Market, readonly string[]]>([
    [5, 'eu', ['eu-76-211']],
    [4.999, 'eu', []],
    [10_000, 'eu', ['eu-76-211']],
    [10_000.001, 'eu', []],
    [1_000, 'de', ['eu-76-211', 'de-fpackv']],
    [10_001, 'de', []],
    [25_000, 'uk', ['uk-2006-659']],
    [25_000.001, 'uk', []],
    [4, 'oiml-country', ['oiml-r87-2004']],
    [50_000, 'oiml-country', ['oiml-r87-2004']],
    [50_000.001, 'oiml-country', []],
    [50_000, 'us', ['us-handbook-133']],
    [1_000, 'ca', ['ca-sfcr-200']],
  ])('to %d g sold in %s: %j', (grams, market, ids) => {
    expect(idsIn(grams, market)).toEqual(ids);
    expect(outsideOf(grams, market) === null).toBe(ids.length > 0);
  });

  it('says why where none does, and borrows none from another market', () => {
    expect(outsideOf(4.9, 'eu')).toEqual({ kind: 'below-scope', fromMilligrams: 5_000 });
    expect(outsideOf(25_000, 'eu')).toEqual({ kind: 'above-scope', upToMilligrams: 10_000_000 });
    expect(outsideOf(25_001, 'uk')).toEqual({ kind: 'above-scope', upToMilligrams: 25_000_000 });
    for (const market of ['eu', 'de', 'uk', 'us', 'ca', 'oiml-country'] as const) {
      expect(outsideOf(1_000_000, market)).toEqual({ kind: 'bulk-bag', fromMilligrams: 500_000_000 });
    }
  });

  it.each([0, -5, 1.5, NaN])('cannot be told for %d mg', (nominalMilligrams) => {
    expect(() => ruleSetsInScope(nominalMilligrams, 'eu')).toThrow(RangeError);
  });
});

describe('the rule sets that are kept', () => {
  // The figures of R 87:2016 were not obtained; a rule set with its name would be an invention.
  it('have none of the edition of 2016 of OIML R 87', () => {
    expect(ruleSets.filter(({ title }) => title.includes('R 87')).map(({ edition }) => edition.text)).toEqual(['2004']);
  });

  it('say of every figure where it stands and how it is known', () => {
    for (const { edition, scope, shortBy, runRules, plans } of ruleSets) {
      const rows = plans.flatMap((plan) => plan.rows);
      const origins = [edition, scope, shortBy, ...runRules, ...rows, ...rows.flatMap(({ mean }) => mean ?? [])];
      for (const { clause, evidence } of origins) {
        expect(clause).not.toBe('');
        expect(['seen', 'memory', 'computed', 'own-reading']).toContain(evidence);
      }
    }
  });

  it('mark what is from memory: the plans of R 87 and of Handbook 133, and the 2.5 %', () => {
    const evidenceOf = (id: RuleSetId) =>
      new Set(ruleSetOf(id).plans.flatMap(({ rows }) => rows.map((row) => row.evidence)));
    expect([...evidenceOf('oiml-r87-2004')]).toEqual(['memory']);
    expect([...evidenceOf('us-handbook-133')]).toEqual(['memory']);
    expect([...evidenceOf('eu-76-211')]).toEqual(['seen']);
    expect(ruleSetOf('eu-76-211').runRules[1]).toMatchObject({ atMostPermille: 25, evidence: 'memory' });
    expect(ruleSetOf('de-fpackv').runRules[1]).toMatchObject({ atMostPermille: 20, evidence: 'seen' });
  });

  it('have no single plan and none under 100 packs in the directive, which gives neither', () => {
    expect(ruleSetOf('eu-76-211').plans.map(({ kind }) => kind)).toEqual(['double', 'destructive']);
    expect(ruleSetOf('uk-2006-659').plans.map(({ kind }) => kind)).toEqual([
      ...['single', 'double', 'destructive', 'under-100'],
    ]);
  });

  it('have plans whose rows follow each other without a gap', () => {
    for (const { rows } of ruleSets.flatMap(({ plans }) => plans)) {
      rows.slice(1).forEach((row, index) => {
        expect(row.batchFrom).toBe((rows[index]!.batchTo ?? NaN) + 1);
      });
    }
  });
});

describe('what a plan asks of a batch', () => {
  const single = planOf('uk-2006-659', 'single');

  // Directive 76/211/EEC Annex II 2.1: 10 000 packs at most, but at the end of the line the output of an hour, any size.
  it('knows batches from 100 packs, and up to 10 000 away from the line', () => {
    expect(planRowFor(single, 99, 'elsewhere')).toEqual({ row: null, why: 'batch-too-small', fromPackCount: 100 });
    expect(planRowFor(single, 100, 'elsewhere').row?.batchTo).toBe(500);
    expect(planRowFor(single, 500, 'elsewhere').row?.batchTo).toBe(500);
    expect(planRowFor(single, 501, 'elsewhere').row?.batchTo).toBe(3_200);
    expect(planRowFor(single, 3_200, 'elsewhere').row?.batchTo).toBe(3_200);
    expect(planRowFor(single, 3_201, 'elsewhere').row?.batchTo).toBeNull();
    expect(planRowFor(single, 10_000, 'elsewhere').row?.batchFrom).toBe(3_201);
    expect(planRowFor(single, 10_001, 'elsewhere')).toMatchObject({ why: 'batch-too-large', upToPackCount: 10_000 });
    expect(planRowFor(single, 10_001, 'end-of-line').row?.batchFrom).toBe(3_201);
  });

  it('knows batches under 100 as a whole', () => {
    const under = planOf('uk-2006-659', 'under-100');
    expect(planRowFor(under, 99, 'elsewhere').row?.counting).toEqual({ by: 'share', atMostPermille: 50 });
    expect(planRowFor(under, 100, 'elsewhere')).toMatchObject({ why: 'batch-too-large', upToPackCount: 99 });
  });

  it.each([0, -1, 1.5])('refuses a batch of %d', (packCount) => {
    expect(() => planRowFor(single, packCount, 'elsewhere')).toThrow(RangeError);
  });
});

interface ReferenceTest {
  readonly single_nondestructive_UK_only: {
    readonly rows: readonly { batch: string; n: number; accept: number; reject: number }[];
  };
  readonly double_nondestructive: {
    readonly rows: readonly {
      batch: string;
      n1: number;
      accept1: number;
      reject1: number;
      n2: number;
      accept2_cumulative: number;
      reject2_cumulative: number;
    }[];
  };
  readonly destructive_single: { readonly rows: readonly { n: number; accept: number; reject: number }[] };
  readonly mean_test: { readonly rows: readonly { batch: string; n: number; k_printed: number }[] };
}

/** "100-500", "3201+", ">3200", "<=250", ">=251" or "12" as edges. */
function edges(batch: string): { readonly batchFrom: number; readonly batchTo: number | null } {
  const [low, high] = (batch.match(/\d+/g) ?? []).map(Number) as [number, number | undefined];
  if (batch.startsWith('>=')) return { batchFrom: low, batchTo: null };
  if (batch.startsWith('>')) return { batchFrom: low + 1, batchTo: null };
  return { batchFrom: low, batchTo: batch.endsWith('+') ? null : (high ?? low) };
}

// Directive 76/211/EEC Annex II 2.2 and 2.3; UK SI 2006/659 Schedule 2.
describeWithChecks('the plans of the reference test', () => {
  const checks = () => readChecks<ReferenceTest>('metrology/reference-test-76-211.json');

  it('have the printed numbers of the single plan', () => {
    const expected = checks().single_nondestructive_UK_only.rows.map(({ batch, n, accept, reject }) => ({
      ...edges(batch),
      counting: { by: 'number', steps: [{ packCount: n, accept, reject }] },
    }));
    expect(planOf('uk-2006-659', 'single').rows).toMatchObject(expected);
  });

  it.each(['eu-76-211', 'uk-2006-659'] as const)('have the printed numbers of the double plan, %s', (id) => {
    const expected = checks().double_nondestructive.rows.map((row) => ({
      ...edges(row.batch),
      counting: {
        by: 'number',
        steps: [
          { packCount: row.n1, accept: row.accept1, reject: row.reject1 },
          { packCount: row.n2, accept: row.accept2_cumulative, reject: row.reject2_cumulative },
        ],
      },
    }));
    expect(planOf(id, 'double').rows).toMatchObject(expected);
  });

  it('have the printed numbers of the destructive plan', () => {
    const [row] = checks().destructive_single.rows;
    const step = { packCount: row!.n, accept: row!.accept, reject: row!.reject };
    expect(planOf('eu-76-211', 'destructive').rows).toMatchObject([
      { batchFrom: 100, batchTo: null, counting: { by: 'number', steps: [step] } },
    ]);
  });

  it('have mean samples of their own size, with the printed factors', () => {
    const [small, large, destructive] = checks().mean_test.rows;
    const meanOf = (id: RuleSetId, kind: PlanKind) =>
      planOf(id, kind).rows.map(({ mean, counting }) => [
        mean!.packCount ?? (counting.by === 'number' ? counting.steps[0].packCount : NaN),
        mean!.factorThousandths! / 1000,
      ]);
    const expected = [small!, large!, large!].map(({ n, k_printed }) => [n, k_printed]);
    expect(meanOf('uk-2006-659', 'single')).toEqual(expected);
    expect(meanOf('eu-76-211', 'double')).toEqual(expected);
    expect(meanOf('eu-76-211', 'destructive')).toEqual([[destructive!.n, destructive!.k_printed]]);
  });
});

interface OimlChecks {
  readonly edition_2004: {
    readonly rows: readonly { inspection_lot: string; n: number; SCF_printed: number; allowed_T1: number }[];
  };
}

interface CategoryChecks {
  readonly category_A: readonly { lot: string; n: number; SCF_recomputed?: number; MAV_exceed_allowed: number }[];
  readonly category_B: readonly { lot: string; n: number; MAV_exceed_allowed: number }[];
}

const singleStep = (packCount: number, accept: number) => ({
  by: 'number',
  steps: [{ packCount, accept, reject: accept + 1 }],
});

// OIML R 87:2004 Table 1 and NIST Handbook 133 Appendix A, as far as the files say that they were seen.
describeWithChecks('the other plans', () => {
  it('have the numbers of R 87:2004', () => {
    const { rows } = readChecks<OimlChecks>('metrology/oiml-r87-sampling.json').edition_2004;
    expect(planOf('oiml-r87-2004', 'single').rows).toMatchObject(
      rows.map(({ inspection_lot, n, SCF_printed, allowed_T1 }) => ({
        ...edges(inspection_lot),
        counting: singleStep(n, allowed_T1),
        mean: { packCount: null, factorThousandths: Math.round(SCF_printed * 1000) },
      })),
    );
  });

  it('have the numbers of both categories of Handbook 133', () => {
    const { category_A: a, category_B: b } = readChecks<CategoryChecks>('metrology/hb133-category-a.json');
    expect(planOf('us-handbook-133', 'category-a').rows).toMatchObject(
      a.map(({ lot, n, SCF_recomputed, MAV_exceed_allowed }) => ({
        ...edges(lot),
        counting: singleStep(n, MAV_exceed_allowed),
        mean: SCF_recomputed === undefined ? null : { factorThousandths: Math.round(SCF_recomputed * 1000) },
      })),
    );
    expect(planOf('us-handbook-133', 'category-b').rows).toMatchObject(
      b.map(({ n, MAV_exceed_allowed }) => ({
        counting: singleStep(n, MAV_exceed_allowed),
        mean: { factorThousandths: null },
      })),
    );
  });
});
