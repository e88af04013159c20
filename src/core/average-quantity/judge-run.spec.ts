import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { type CountLine, judgeRun, limitsToCount, type MeanLine, type RunLine, type RunVerdict } from './judge-run.js';
import { errorSums, type RunSummary, runSummaryOf } from './pack-sums.js';
import type { Market, RuleSetId } from './rule-set.js';

const kilogram = 1_000_000;

/** Packs at hand as the summary that is kept of them, with counts for the limits of some markets. */
function summaryOf(
  netsMilligrams: readonly number[],
  nominalMilligrams = kilogram,
  markets: readonly Market[] = ['eu', 'de', 'uk', 'us', 'oiml-country'],
): RunSummary {
  const shortCounts = limitsToCount(nominalMilligrams, markets).map((belowMilligrams) => ({
    belowMilligrams,
    packCount: netsMilligrams.filter((net) => net < belowMilligrams).length,
  }));
  return { ...errorSums(netsMilligrams, nominalMilligrams), shortCounts };
}

const packs = (...groups: readonly (readonly [count: number, net: number])[]): number[] =>
  groups.flatMap(([count, net]) => Array.from({ length: count }, () => net));

function linesOf(verdict: RunVerdict, id: RuleSetId): readonly RunLine[] {
  return verdict.ruleSets.find(({ ruleSet }) => ruleSet === id)!.lines;
}

function judged(nets: readonly number[], market: Market = 'eu', nominalMilligrams = kilogram): RunVerdict {
  return judgeRun({ nominalMilligrams, market, summary: summaryOf(nets, nominalMilligrams) });
}

const words = (lines: readonly RunLine[]): string[] => lines.map(({ rule, verdict }) => `${rule} ${verdict}`);

describe('a run weighed pack by pack', () => {
  // Directive 76/211/EEC Annex I 1.1 to 1.3.
  it('is judged by the three rules of packers, each with its number, limit and reason', () => {
    const lines = linesOf(judged(packs([970, 1_001_000], [29, 984_999], [1, 969_999])), 'eu-76-211');
    const [mean, t1, t2] = lines as [MeanLine, CountLine, CountLine];
    expect(mean).toMatchObject({ verdict: 'kept', reason: 'within', packCount: 1_000, meanErrorMicrograms: 504_970 });
    expect(t1).toMatchObject({ verdict: 'broken', reason: 'outside', belowMilligrams: 985_000, shortCount: 30 });
    expect(t1).toMatchObject({ allowedCount: 25, atMostPermille: 25, clause: 'Annex I 1.2', evidence: 'memory' });
    expect(t2).toMatchObject({ verdict: 'broken', shortCount: 1, allowedCount: 0, belowMilligrams: 970_000 });
  });

  it('keeps the rule on the mean exactly at the nominal quantity, and breaks it by one milligram in all packs', () => {
    const at = linesOf(judged(packs([500, 1_000_001], [500, 999_999])), 'eu-76-211')[0];
    expect(at).toMatchObject({ verdict: 'kept', reason: 'at-the-limit', meanErrorMicrograms: 0 });
    const below = linesOf(judged(packs([499, 1_000_001], [500, 999_999], [1, 1_000_000])), 'eu-76-211')[0];
    expect(below).toMatchObject({ verdict: 'broken', reason: 'outside', meanErrorMicrograms: -1 });
  });

  it('keeps the second rule at exactly 2.5 %, and breaks it with one pack more', () => {
    const at = linesOf(judged(packs([975, 1_010_000], [25, 984_999])), 'eu-76-211')[1];
    expect(at).toMatchObject({ verdict: 'kept', reason: 'at-the-limit', shortCount: 25, allowedCount: 25 });
    const over = linesOf(judged(packs([974, 1_010_000], [26, 984_999])), 'eu-76-211')[1];
    expect(over).toMatchObject({ verdict: 'broken', shortCount: 26 });
    const few = linesOf(judged(packs([38, 1_010_000], [1, 984_999])), 'eu-76-211')[1];
    expect(few).toMatchObject({ verdict: 'broken', allowedCount: 0 });
    const forty = linesOf(judged(packs([39, 1_010_000], [1, 984_999])), 'eu-76-211')[1];
    expect(forty).toMatchObject({ verdict: 'kept', reason: 'at-the-limit', allowedCount: 1 });
  });

  it('does not count a pack exactly at T1 or T2', () => {
    const lines = linesOf(judged(packs([10, 1_010_000], [5, 985_000])), 'eu-76-211');
    expect(lines[1]).toMatchObject({ verdict: 'kept', reason: 'within', shortCount: 0 });
    const atT2 = linesOf(judged(packs([1_000, 1_010_000], [5, 970_000])), 'eu-76-211');
    expect(words(atT2)).toEqual(['mean kept', 'beyondT1 kept', 'beyondT2 kept']);
  });

  // FPackV section 9(3): 2 % at the time of production; 9(4): T2 of 35 g is 28.7 g, that of the directive 28.6 g.
  it('is judged by the directive and by the German regulation side by side', () => {
    const nets = packs([978, 1_010_000], [22, 984_999]);
    const verdict = judged(nets, 'de');
    expect(words(linesOf(verdict, 'eu-76-211'))).toEqual(['mean kept', 'beyondT1 kept', 'beyondT2 kept']);
    expect(words(linesOf(verdict, 'de-fpackv'))).toEqual(['mean kept', 'beyondT1 broken', 'beyondT2 kept']);
    const sachets = judged(packs([1_000, 35_500], [1, 28_650]), 'de', 35_000);
    expect(words(linesOf(sachets, 'eu-76-211'))[2]).toBe('beyondT2 kept');
    expect(words(linesOf(sachets, 'de-fpackv'))[2]).toBe('beyondT2 broken');
    expect(limitsToCount(35_000, ['de'])).toEqual([28_600, 28_700, 31_800]);
  });

  // OIML R 87 rounds T of 1250 g up to 19 g, the directive to 18.8 g (Australian reg. 4.36 note a; GOV.UK).
  it('has another T1 by OIML R 87 above one kilogram', () => {
    const nets = packs([10, 1_260_000], [1, 1_231_100]);
    expect(linesOf(judged(nets, 'uk', 1_250_000), 'uk-2006-659')[1]).toMatchObject({
      shortCount: 1,
      verdict: 'broken',
    });
    expect(linesOf(judged(nets, 'oiml-country', 1_250_000), 'oiml-r87-2004')[1]).toMatchObject({ shortCount: 0 });
  });

  it('can be judged from one summary under the rules of the EU and of the USA', () => {
    const summary = summaryOf(packs([970, 1_001_000], [30, 968_000]));
    const [eu, us] = (['eu', 'us'] as const).map((market) =>
      judgeRun({ nominalMilligrams: kilogram, market, summary }),
    );
    expect(words(linesOf(eu!, 'eu-76-211'))).toEqual(['mean kept', 'beyondT1 broken', 'beyondT2 broken']);
    // NIST Handbook 133 Table 2-5, from memory: 35.3 g for packs of 970 g to 1.12 kg.
    expect(words(linesOf(us!, 'us-handbook-133'))).toEqual(['mean kept', 'beyondMav kept']);
    expect(linesOf(us!, 'us-handbook-133')[1]).toMatchObject({ belowMilligrams: 964_700, evidence: 'own-reading' });
  });

  // SFCR section 200(4)(c): two or more, not one; the Canadian table of tolerances was not obtained.
  it('says that packs cannot be counted where the table was not obtained', () => {
    const lines = linesOf(judged(packs([10, 1_010_000], [1, 900_000]), 'ca'), 'ca-sfcr-200');
    expect(words(lines)).toEqual(['mean kept', 'beyondT2 not-judged']);
    expect(lines[1]).toMatchObject({ reason: 'table-not-obtained', allowedCount: 1, belowMilligrams: null });
  });

  it('says that nothing was weighed, or that a limit was not counted', () => {
    const nothing = linesOf(judged([]), 'eu-76-211');
    expect(nothing.map(({ reason }) => reason)).toEqual(['nothing-weighed', 'nothing-weighed', 'nothing-weighed']);
    expect(nothing[0]).toMatchObject({ verdict: 'not-judged', meanErrorMicrograms: null });
    const uncounted = { ...errorSums(packs([10, kilogram]), kilogram), shortCounts: [] };
    const lines = linesOf(judgeRun({ nominalMilligrams: kilogram, market: 'eu', summary: uncounted }), 'eu-76-211');
    expect(lines.map(({ reason }) => reason)).toEqual(['at-the-limit', 'not-counted', 'not-counted']);
    expect(lines[1]).toMatchObject({ shortCount: null, leastShortCount: 0, mostShortCount: 10 });
  });

  it('is decided by the nearest limits that were counted, where these are enough', () => {
    const secondLine = (lower: number, higher: number) => {
      const shortCounts = [
        { belowMilligrams: 984_000, packCount: lower },
        { belowMilligrams: 986_000, packCount: higher },
      ];
      const summary = { packCount: 1_000, errorSumMilligrams: 0, errorSquareSum: 10n ** 12n, shortCounts };
      return linesOf(judgeRun({ nominalMilligrams: kilogram, market: 'eu', summary }), 'eu-76-211')[1];
    };
    expect(secondLine(3, 25)).toMatchObject({ verdict: 'kept', reason: 'at-the-limit', shortCount: null });
    expect(secondLine(3, 24)).toMatchObject({ verdict: 'kept', leastShortCount: 3, mostShortCount: 24 });
    expect(secondLine(26, 40)).toMatchObject({ verdict: 'broken', reason: 'outside', shortCount: null });
    expect(secondLine(25, 26)).toMatchObject({ verdict: 'not-judged', reason: 'not-counted' });
    expect(secondLine(7, 7)).toMatchObject({ verdict: 'kept', shortCount: 7 });
  });

  it('is outside of every rule as a bulk bag, and that is all that is said', () => {
    const summary = { packCount: 0, errorSumMilligrams: 0, errorSquareSum: 0, shortCounts: [] };
    const verdict = judgeRun({ nominalMilligrams: 1_000_000_000, market: 'eu', summary });
    expect(verdict).toMatchObject({ ruleSets: [], outside: { kind: 'bulk-bag' } });
  });

  it.each([
    [[{ belowMilligrams: 985_000, packCount: 11 }]],
    [[{ belowMilligrams: 985_000, packCount: -1 }]],
    [[{ belowMilligrams: 985_000, packCount: 0.5 }]],
    [
      [
        { belowMilligrams: 985_000, packCount: 1 },
        { belowMilligrams: 970_000, packCount: 2 },
      ],
    ],
  ])('refuses counts that no ten packs have: %j', (shortCounts) => {
    const summary = { ...summaryOf(packs([10, kilogram])), shortCounts };
    expect(() => judgeRun({ nominalMilligrams: kilogram, market: 'eu', summary })).toThrow(RangeError);
  });
});

const someNets = fc.array(fc.integer({ min: 960_000, max: 1_030_000 }), { minLength: 1, maxLength: 80 });
const someMarket = fc.constantFrom<Market>('eu', 'de', 'uk', 'us', 'oiml-country');
const worseness = { kept: 0, 'not-judged': 0, broken: 1 };

/** Nets as blocks of weights sum them up: bins of a gram about the nominal quantity, outermost ones open. */
function histogramOf(nets: readonly number[]): RunSummary {
  const bins = Array.from({ length: 60 }, () => 0);
  for (const net of nets) bins[Math.max(0, Math.min(59, Math.floor((net - kilogram) / 1000) + 30))]! += 1;
  const below = (limit: number) => nets.filter((net) => net < limit).length;
  const counted = { histogram: bins, beyondT1Count: below(985_000), beyondT2Count: below(970_000) };
  const yardstick = { nominalMilligrams: kilogram, binMilligrams: 1000, t1Milligrams: 985_000, t2Milligrams: 970_000 };
  const smallestMilligrams = nets.length === 0 ? null : Math.min(...nets);
  return runSummaryOf({ ...errorSums(nets, kilogram), ...counted, smallestMilligrams }, yardstick);
}

describe('a run that is kept as a histogram', () => {
  it('is judged as its packs are, or not at all', () => {
    fc.assert(
      fc.property(someNets, someMarket, (nets, market) => {
        const summary = histogramOf(nets);
        const kept = judgeRun({ nominalMilligrams: kilogram, market, summary }).ruleSets.flatMap(({ lines }) => lines);
        const exact = judged(nets, market).ruleSets.flatMap(({ lines }) => lines);
        kept.forEach(({ verdict, rule }, index) => {
          // The limits of every rule set but that of the United States are counted or at an edge between bins.
          if (verdict !== 'not-judged' || rule !== 'beyondMav') expect(verdict).toBe(exact[index]!.verdict);
        });
      }),
    );
  });

  it('is told to be within the rule of the United States without a count of its own', () => {
    // 35.3 g lie between the bins of 35 g and 36 g; the lightest pack is not that light.
    const light = { nominalMilligrams: kilogram, market: 'us', summary: histogramOf([964_700, 1_040_000]) } as const;
    expect(linesOf(judgeRun(light), 'us-handbook-133')[1]).toMatchObject({ verdict: 'kept', shortCount: 0 });
    const summary = histogramOf([964_699, 1_040_000]);
    expect(linesOf(judgeRun({ ...light, summary }), 'us-handbook-133')[1]).toMatchObject({ verdict: 'not-judged' });
    expect(linesOf(judgeRun({ ...light, summary: histogramOf([]) }), 'us-handbook-133')[1]).toMatchObject({
      reason: 'nothing-weighed',
    });
  });
});

describe('the verdict on a run', () => {
  it('does not depend on the order of the packs', () => {
    fc.assert(
      fc.property(someNets, someMarket, (nets, market) => {
        expect(judged(nets.toReversed(), market)).toEqual(judged(nets, market));
      }),
    );
  });

  it('never turns from kept to broken because a pack is heavier', () => {
    fc.assert(
      fc.property(someNets, someMarket, fc.nat(79), fc.integer({ min: 1, max: 40_000 }), (nets, market, at, more) => {
        const heavier = nets.map((net, index) => (index === at % nets.length ? net + more : net));
        const before = judged(nets, market).ruleSets.flatMap(({ lines }) => lines);
        const after = judged(heavier, market).ruleSets.flatMap(({ lines }) => lines);
        after.forEach(({ verdict }, index) => {
          expect(worseness[verdict]).toBeLessThanOrEqual(worseness[before[index]!.verdict]);
        });
      }),
    );
  });

  it('is the same for the same packs many times over', () => {
    fc.assert(
      fc.property(someNets, someMarket, fc.integer({ min: 2, max: 5 }), (nets, market, times) => {
        const many = Array.from({ length: times }, () => nets).flat();
        const verdicts = (of: readonly number[]) => judged(of, market).ruleSets.map(({ lines }) => words(lines));
        expect(verdicts(many)).toEqual(verdicts(nets));
      }),
    );
  });
});
