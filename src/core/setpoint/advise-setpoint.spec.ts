import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { describeWithChecks, readChecks } from '../../../test/support/checks.js';
import { normalDraws } from '../../../test/support/normal-draws.js';
import { shortPackLimits } from '../average-quantity/tolerable-negative-error.js';
import { mean } from '../statistics/mean.js';
import { standardDeviation } from '../statistics/standard-deviation.js';
import { normalShares } from '../statistics/standard-normal.js';
import { adviseSetpoint, monthlyChange, type SetpointFacts } from './advise-setpoint.js';
import { lotVariation } from './lot-variation.js';
import { fillFigures, fillRuleNames, lowestMean, type FillRules } from './lowest-mean.js';
import { chanceToPassMeanTest } from './pass-mean-test.js';

function rulesOf(nominalMilligrams: number): FillRules {
  return { nominalMilligrams, ...shortPackLimits(nominalMilligrams), shareBeyondT1: 0.025, shareBeyondT2: 0.0001 };
}

const kilogramPacks: SetpointFacts = {
  rules: rulesOf(1_000_000),
  sigmaMilligrams: 8_000,
  setByPackCount: 50,
  driftSigmaMilligrams: 1_500,
  tareLimitMilligrams: 300,
  scaleLimitMilligrams: 500,
  stepMilligrams: 500,
  riskPerLot: 0.05,
};

interface SetpointChecks {
  readonly regimes: Readonly<Record<string, number>>;
  readonly rows: readonly {
    readonly Qn: number;
    readonly TNE: number;
    readonly sigma: number;
    readonly mu_rule1: number;
    readonly mu_rule2: number;
    readonly mu_rule3: number;
    readonly mu_min: number;
    readonly binding: string;
    readonly mean_giveaway_g: number;
    readonly giveaway_pct: number;
    readonly E_overfill_only_g: number;
    readonly P_below_Qn: number;
    readonly P_below_T1: number;
    readonly P_below_T2: number;
  }[];
  readonly mean_test_pass_probability: readonly {
    readonly n: number;
    readonly k: number;
    readonly shift_in_sigma: number;
    readonly P_pass_mean_test: number;
  }[];
}

// Computed for the check values; the shares of 2.5 % and 1 in 10 000 are customary UK packers' figures, from memory.
describeWithChecks('the lowest mean', () => {
  const checks = () => readChecks<SetpointChecks>('metrology/setpoint.json');

  it('of 34 packs by each rule, with what it gives away', () => {
    const { rows } = checks();
    expect(rows).toHaveLength(34);
    for (const row of rows) {
      const rules = rulesOf(row.Qn * 1000);
      const sigmaMilligrams = row.sigma * 1000;
      const { byRule, milligrams, binds } = lowestMean(rules, sigmaMilligrams);
      expect(rules.nominalMilligrams - rules.t1Milligrams).toBe(Math.round(row.TNE * 1000));
      const figures = fillFigures(rules, { meanMilligrams: milligrams, sigmaMilligrams });
      for (const [got, said] of [
        [byRule.mean, row.mu_rule1],
        [byRule.t1, row.mu_rule2],
        [byRule.t2, row.mu_rule3],
        [milligrams, row.mu_min],
        [figures.netGiveawayMilligrams, row.mean_giveaway_g],
        [figures.overfillMilligrams, row.E_overfill_only_g],
      ] as const) {
        expect([row.Qn, row.sigma, said, Math.abs(got / 1000 - said) <= 0.00051]).toEqual([
          row.Qn,
          row.sigma,
          said,
          true,
        ]);
      }
      expect(binds).toBe(row.binding.toLowerCase());
      expect(Math.abs(figures.netGiveawayMilligrams / row.Qn / 10 - row.giveaway_pct)).toBeLessThan(0.000051);
      expect(figures.shareBelowNominal).toBeCloseTo(row.P_below_Qn, 5);
      // Printed to three digits.
      expect(Math.abs(figures.shareBeyondT1 / row.P_below_T1 - 1)).toBeLessThan(0.0051);
      expect(Math.abs(figures.shareBeyondT2 / row.P_below_T2 - 1)).toBeLessThan(0.0051);
    }
  });

  it('changes its rule where the regimes meet', () => {
    const { regimes } = checks();
    const rules = rulesOf(1_000_000);
    const tolerance = rules.nominalMilligrams - rules.t1Milligrams;
    const bindsAt = (share: number) => lowestMean(rules, share * tolerance).binds;
    const [toT1, toT2] = [regimes['rule2_overtakes_rule1_at_sigma_over_TNE']!, regimes['rule3_overtakes_rule2']!];
    expect([bindsAt(toT1 - 1e-6), bindsAt(toT1 + 1e-6)]).toEqual(['mean', 't1']);
    expect([bindsAt(toT2 - 1e-6), bindsAt(toT2 + 1e-6)]).toEqual(['t1', 't2']);
    const { byRule } = lowestMean(rules, regimes['rule3_overtakes_rule1']! * tolerance);
    expect(Math.abs(byRule.t2 - byRule.mean)).toBeLessThan(0.1);
  });

  // Directive 76/211/EEC Annex II 2.3.
  it('is not what the mean test proves', () => {
    const rows = checks().mean_test_pass_probability;
    expect(rows).toHaveLength(21);
    for (const { n, k, shift_in_sigma: shift, P_pass_mean_test: said } of rows) {
      expect(chanceToPassMeanTest({ packCount: n, factor: k }, shift)).toBeCloseTo(said, 5);
    }
  });
});

describe('what a setting gives away', () => {
  it('is nothing at the nominal quantity, although the heavy half holds too much', () => {
    const figures = fillFigures(rulesOf(200_000), { meanMilligrams: 200_000, sigmaMilligrams: 4_000 });
    expect(figures.netGiveawayMilligrams).toBe(0);
    expect(figures.overfillMilligrams).toBeCloseTo(0.398942 * 4000, 2);
    expect(figures.shortageMilligrams).toBeCloseTo(figures.overfillMilligrams, 9);
  });

  it('is overfill less shortage', () => {
    fc.assert(
      fc.property(fc.integer({ min: 980_000, max: 1_020_000 }), fc.integer({ min: 100, max: 20_000 }), (at, sigma) => {
        const figures = fillFigures(rulesOf(1_000_000), { meanMilligrams: at, sigmaMilligrams: sigma });
        const { overfillMilligrams, shortageMilligrams, netGiveawayMilligrams } = figures;
        expect(overfillMilligrams - shortageMilligrams).toBeCloseTo(netGiveawayMilligrams, 7);
        expect(Math.min(overfillMilligrams, shortageMilligrams)).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it('comes in kilograms and money of a month', () => {
    const month = { nominalMilligrams: 1_000_000, packsPerMonth: 1_000_000, pricePerKilogram: 0.6 };
    expect(monthlyChange({ ...month, currentMilligrams: 1_006_000, advisedMilligrams: 1_004_000 })).toEqual({
      savedKilograms: 2000,
      savedMoney: 1200,
      givenAwayKilograms: 6000,
      givenAwayMoney: 3600,
    });
    const tooLow = monthlyChange({ ...month, currentMilligrams: 999_000, advisedMilligrams: 1_001_000 });
    expect([tooLow.savedKilograms, tooLow.givenAwayKilograms]).toEqual([-2000, -1000]);
    expect(() => monthlyChange({ ...month, currentMilligrams: NaN, advisedMilligrams: 1 })).toThrow(RangeError);
    expect(() => monthlyChange({ ...month, packsPerMonth: -1, currentMilligrams: 1, advisedMilligrams: 1 })).toThrow();
  });
});

describe('the advised setpoint', () => {
  it('shows its sum, each term by name', () => {
    const { setpointMilligrams, terms, lowest, chance } = adviseSetpoint(kilogramPacks);
    expect(setpointMilligrams).toBe(1_005_000);
    expect(lowest.binds).toBe('t1');
    expect(terms.map(({ name, milligrams }) => [name, Math.round(milligrams * 10) / 10])).toEqual([
      ['lowest-mean', 1_000_679.7],
      ['sampling-and-drift', 3_090.4],
      ['tare', 300],
      ['scale', 500],
      ['rounding-up', 429.9],
    ]);
    expect(chance.samplingMilligrams).toBeCloseTo((1.644853627 * 8_000) / Math.sqrt(50), 3);
    expect(chance.driftMilligrams).toBeCloseTo(1.644853627 * 1_500, 3);
    expect(chance.togetherMilligrams).toBeCloseTo(Math.hypot(chance.samplingMilligrams, chance.driftMilligrams), 9);
  });

  it('leaves sampling out where every pack is weighed, and then chance where nothing drifts', () => {
    const weighed = { ...kilogramPacks, setByPackCount: null };
    expect(adviseSetpoint(weighed).chance.samplingMilligrams).toBe(0);
    const still = adviseSetpoint({ ...weighed, driftSigmaMilligrams: 0, stepMilligrams: 1 });
    expect(still.setpointMilligrams).toBe(1_001_480);
    expect(still.risk).toEqual({ mean: 0, t1: 0, t2: 0, any: 0 });
  });

  const facts = fc.record({
    rules: fc.constantFrom(50_000, 200_000, 454_000, 1_000_000, 25_000_000).map(rulesOf),
    sigmaMilligrams: fc.integer({ min: 100, max: 200_000 }),
    setByPackCount: fc.option(fc.integer({ min: 1, max: 500 })),
    driftSigmaMilligrams: fc.integer({ min: 0, max: 20_000 }),
    tareLimitMilligrams: fc.integer({ min: 0, max: 2_000 }),
    scaleLimitMilligrams: fc.integer({ min: 0, max: 10_000 }),
    stepMilligrams: fc.constantFrom(1, 50, 100, 1_000),
    riskPerLot: fc.constantFrom(0.001, 0.01, 0.05, 0.5),
  });

  it('sums to the setpoint, lies on a step, is never below nominal, and keeps the risk', () => {
    fc.assert(
      fc.property(facts, (asked) => {
        const { setpointMilligrams, terms, risk } = adviseSetpoint(asked);
        expect(terms.reduce((sum, { milligrams }) => sum + milligrams, 0)).toBeCloseTo(setpointMilligrams, 6);
        expect(setpointMilligrams % asked.stepMilligrams).toBe(0);
        expect(setpointMilligrams).toBeGreaterThanOrEqual(asked.rules.nominalMilligrams);
        expect(risk.any).toBeLessThanOrEqual(asked.riskPerLot * (1 + 1e-9));
        expect(risk.any).toBe(Math.max(risk.mean, risk.t1, risk.t2));
        const rounding = terms.at(-1)!.milligrams;
        expect(rounding >= 0 && rounding < asked.stepMilligrams).toBe(true);
      }),
    );
  });

  it('falls with nothing that grows but the packs weighed and the risk', () => {
    fc.assert(
      fc.property(facts, (asked) => {
        const at = (changed: Partial<SetpointFacts>) => adviseSetpoint({ ...asked, ...changed }).setpointMilligrams;
        const base = at({});
        expect(at({ sigmaMilligrams: asked.sigmaMilligrams + 1000 })).toBeGreaterThanOrEqual(base);
        expect(at({ driftSigmaMilligrams: asked.driftSigmaMilligrams + 500 })).toBeGreaterThanOrEqual(base);
        expect(at({ tareLimitMilligrams: asked.tareLimitMilligrams + 500 })).toBeGreaterThanOrEqual(base);
        expect(at({ scaleLimitMilligrams: asked.scaleLimitMilligrams + 500 })).toBeGreaterThanOrEqual(base);
        expect(at({ riskPerLot: 0.5 })).toBeLessThanOrEqual(base);
        expect(at({ setByPackCount: (asked.setByPackCount ?? 1000) * 2 })).toBeLessThanOrEqual(
          at({ setByPackCount: asked.setByPackCount ?? 1000 }),
        );
      }),
    );
  });

  it.each<Partial<SetpointFacts>>([
    { sigmaMilligrams: 0 },
    { driftSigmaMilligrams: -1 },
    { tareLimitMilligrams: NaN },
    { scaleLimitMilligrams: Infinity },
    { setByPackCount: 0 },
    { stepMilligrams: 0 },
    { riskPerLot: 0 },
    { riskPerLot: 0.51 },
    { rules: { ...rulesOf(1_000_000), t1Milligrams: 1_000_000 } },
    { rules: { ...rulesOf(1_000_000), shareBeyondT2: 0 } },
  ])('is refused for %j', (wrong) => {
    expect(() => adviseSetpoint({ ...kilogramPacks, ...wrong })).toThrow(RangeError);
  });
});

/** What became of simulated lots at one setting: in how many of them each rule was broken. */
type Broken = Record<'mean' | 't1' | 't2', number>;

const lotCount = 10_000;

/**
 * Plays lots as the advice takes them to be: each time the line is set by as many weighed packs, every one drawn; the lot
 * drifts off; scale and tare stay at their limits. A lot's own mean and shares are its true ones, by the rules' own words
 * and not by the advice's sum.
 */
function playLots(facts: SetpointFacts, settings: readonly number[], seed: number): readonly Broken[] {
  const draw = normalDraws(seed, `lots of ${facts.rules.nominalMilligrams} mg`);
  const { rules, sigmaMilligrams: sigma, setByPackCount: count } = facts;
  const broken = settings.map(() => ({ mean: 0, t1: 0, t2: 0 }));
  for (let lot = 0; lot < lotCount; lot += 1) {
    let seen = 0;
    for (let pack = 0; pack < (count ?? 0); pack += 1) seen += draw(0, sigma);
    const off = (count === null ? 0 : seen / count) + draw(0, facts.driftSigmaMilligrams);
    for (const [at, setting] of settings.entries()) {
      const trueMean = setting - off - facts.tareLimitMilligrams - facts.scaleLimitMilligrams;
      const found = broken[at]!;
      if (trueMean < rules.nominalMilligrams) found.mean += 1;
      if (normalShares((rules.t1Milligrams - trueMean) / sigma).below > rules.shareBeyondT1) found.t1 += 1;
      if (normalShares((rules.t2Milligrams - trueMean) / sigma).below > rules.shareBeyondT2) found.t2 += 1;
    }
  }
  return broken;
}

const lines: readonly (readonly [string, SetpointFacts])[] = [
  [
    '1 kg, bound by the mean',
    { ...kilogramPacks, sigmaMilligrams: 5_000, driftSigmaMilligrams: 1_000, stepMilligrams: 100 },
  ],
  ['1 kg, bound by T1', kilogramPacks],
  ['1 kg, bound by T2', { ...kilogramPacks, sigmaMilligrams: 10_000, riskPerLot: 0.01 }],
  [
    '200 g, set by 20 packs',
    { ...kilogramPacks, rules: rulesOf(200_000), sigmaMilligrams: 5_000, setByPackCount: 20, stepMilligrams: 200 },
  ],
  [
    '25 kg, every pack weighed',
    {
      ...kilogramPacks,
      rules: rulesOf(25_000_000),
      sigmaMilligrams: 145_000,
      setByPackCount: null,
      driftSigmaMilligrams: 40_000,
      stepMilligrams: 10_000,
    },
  ],
];

describe('of 10 000 simulated lots', () => {
  it.each(lines)(
    '%s: at the advised setpoint no rule is broken more often than stated, a tenth of σ lower one is',
    (_, facts) => {
      const { setpointMilligrams, risk } = adviseSetpoint(facts);
      const lower = setpointMilligrams - facts.sigmaMilligrams / 10;
      const [advised, tenthLower] = playLots(facts, [setpointMilligrams, lower], 1);
      const allowed = facts.riskPerLot * lotCount;
      for (const rule of fillRuleNames) {
        expect([rule, advised![rule] <= allowed, advised]).toEqual([rule, true, advised]);
        // What is stated for each rule is what happens, within what 10 000 lots can tell (four standard deviations).
        const chance = 4 * Math.sqrt(lotCount * risk[rule] * (1 - risk[rule])) + 1;
        expect([rule, Math.abs(advised![rule] - risk[rule] * lotCount) <= chance]).toEqual([rule, true]);
      }
      expect([Math.max(...Object.values(tenthLower!)) > allowed, tenthLower]).toEqual([true, tenthLower]);
    },
  );

  it('that vary and drift, both are found again', () => {
    const draw = normalDraws(3, 'lot variation');
    const lots = Array.from({ length: 1500 }, (_, lot) => {
      const centre = draw(1_000_000, 2_000);
      const packs = Array.from({ length: 8 + (lot % 9) }, () => draw(centre, 6_000));
      return {
        packCount: packs.length,
        meanMilligrams: mean(packs),
        standardDeviationMilligrams: standardDeviation(packs),
      };
    });
    const { sigmaMilligrams, driftSigmaMilligrams } = lotVariation(lots);
    expect(Math.abs(sigmaMilligrams / 6_000 - 1)).toBeLessThan(0.03);
    expect(Math.abs(driftSigmaMilligrams / 2_000 - 1)).toBeLessThan(0.15);
  });
});

describe('how lots vary', () => {
  const lot = { packCount: 50, meanMilligrams: 1_000_000, standardDeviationMilligrams: 5_000 };

  it('is taken apart into what varies within them and between them', () => {
    const { sigmaMilligrams, driftSigmaMilligrams } = lotVariation([lot, { ...lot, meanMilligrams: 1_004_000 }]);
    expect(sigmaMilligrams).toBeCloseTo(5_000, 9);
    expect(driftSigmaMilligrams).toBeCloseTo(Math.sqrt(7.5e6), 6);
    expect(lotVariation([lot, { ...lot, meanMilligrams: 1_000_100 }]).driftSigmaMilligrams).toBe(0);
  });

  it('needs two lots of two packs', () => {
    expect(() => lotVariation([lot])).toThrow(RangeError);
    expect(() => lotVariation([lot, { ...lot, packCount: 1 }])).toThrow(RangeError);
    expect(() => chanceToPassMeanTest({ packCount: 1, factor: 0.4 }, 0)).toThrow(RangeError);
    expect(() => chanceToPassMeanTest({ packCount: 20, factor: -1 }, 0)).toThrow(RangeError);
    expect(() => fillFigures(rulesOf(1_000_000), { meanMilligrams: NaN, sigmaMilligrams: 1 })).toThrow(RangeError);
  });
});
