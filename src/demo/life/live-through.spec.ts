import { describe, expect, it } from '@jest/globals';
import { gramsIn } from '../plant-physics/composition.js';
import type { Act } from './act.js';
import { planDemo, type DemoOptions } from './demo-plan.js';
import { incidentKinds } from './incidents.js';
import { liveThrough, type Lived } from './live-through.js';
import { nominalGrams } from './pack-formats.js';

const live = (options: Partial<DemoOptions> = {}): Lived =>
  liveThrough(planDemo({ days: 2, seed: 1, size: 'usual', ...options }));

function actsOf<Kind extends Act['kind']>(lived: Lived, kind: Kind): Extract<Act, { kind: Kind }>[] {
  return lived.acts.flatMap(({ act }) => (act.kind === kind ? [act as Extract<Act, { kind: Kind }>] : []));
}

const packsOf = ({ truth }: Lived) => truth.cells.reduce((sum, { fromCount, toCount }) => sum + toCount - fromCount, 0);
const gramsOfCells = ({ truth }: Lived) =>
  truth.cells.reduce((sum, { grams }) => sum + Object.values(grams).reduce((all, part) => all + part, 0), 0);

describe('the days of the demo', () => {
  const lived = live();

  it('lose no gram: what was poured is in packs, elsewhere, or still inside', () => {
    const { truth } = lived;
    const bags = truth.pours.filter(({ bag }) => !bag.includes('-bin-')).reduce((sum, { grams }) => sum + grams, 0);
    const dust =
      bags + gramsIn(truth.returned) - gramsOfCells(lived) - gramsIn(truth.elsewhere) - gramsIn(truth.inside);
    // The dust in the emptied bags was lost without having been poured.
    const emptied = truth.pours.length;
    expect(dust).toBeLessThanOrEqual(0);
    expect(-dust).toBeLessThan(emptied * 80);
  });

  it('are the same to the last second for the same seed, and others for another', () => {
    expect(live()).toEqual(lived);
    expect(live({ seed: 2 }).acts).not.toEqual(lived.acts);
  });

  it('hold every kind of incident, even two days', () => {
    const recorded = new Set(lived.truth.pours.map((pour) => pour.recorded));
    expect([...recorded].sort()).toEqual(['after-the-account', 'at-once', 'corrected', 'late', 'one-of-several']);
    for (const kind of ['correct-weighing', 'concede-bag', 'hold-bag', 'lift-hold', 'reject-bag'] as const) {
      expect([kind, actsOf(lived, kind).length]).toEqual([kind, expect.any(Number)]);
      expect(actsOf(lived, kind).length).toBeGreaterThan(0);
    }
    for (const kind of ['downgrade-bag', 'split-pallet', 'tip-bin', 'set-coder-clock', 'hold-lot'] as const) {
      expect([kind, actsOf(lived, kind).length > 0]).toEqual([kind, true]);
    }
    expect(actsOf(lived, 'bag-off').filter(({ rest }) => rest !== null)).toHaveLength(1);
    expect(actsOf(lived, 'close-bag').filter(({ scale }) => scale === 'S2')).toHaveLength(1);
    expect(actsOf(lived, 'prove-empty').filter(({ residueGrams }) => residueGrams > 0)).toHaveLength(1);
    expect(incidentKinds).toHaveLength(15);
  });

  it('hold bags of 950 to 1 050 kg and packs near what they say', () => {
    for (const { grossGrams, tareGrams } of actsOf(lived, 'close-bag')) {
      const net = grossGrams - tareGrams;
      if (tareGrams < 20_000) expect(net > 945_000 && net < 1_052_000).toBe(true);
    }
    const format = new Map(actsOf(lived, 'start-run').map((run) => [run.run, nominalGrams[run.format]]));
    for (const { run, fromCount, toCount, grams } of lived.truth.cells) {
      const mean = Object.values(grams).reduce((sum, part) => sum + part, 0) / (toCount - fromCount);
      const nominal = format.get(run) ?? 0;
      if (toCount - fromCount >= 10) expect(Math.abs(mean / nominal - 1)).toBeLessThan(0.004);
    }
  });

  it('leave no packs between two stretches of the truth', () => {
    const reached = new Map<string, number>();
    for (const { run, fromCount, toCount } of lived.truth.cells) {
      expect(fromCount).toBe(reached.get(run) ?? 0);
      reached.set(run, toCount);
    }
    for (const { run, packCount } of actsOf(lived, 'close-run')) expect(reached.get(run)).toBe(packCount);
  });
});

describe('the size of the demo', () => {
  const daysOf = (options: DemoOptions): number => {
    const { from, until } = planDemo(options);
    return (until - from) / 1440;
  };

  it('is about 80 tonnes a day by itself', () => {
    const options = { days: 5, seed: 1, size: 'usual' } as const;
    const tonnes = gramsOfCells(live(options)) / 1_000_000 / daysOf(options);
    expect(tonnes).toBeGreaterThan(74);
    expect(tonnes).toBeLessThan(86);
  });

  it('is about 200 000 packs of 2 kg a day when large', () => {
    const options = { days: 2, seed: 1, size: 'large' } as const;
    const packs = packsOf(live(options)) / daysOf(options);
    expect(packs).toBeGreaterThan(194_000);
    expect(packs).toBeLessThan(206_000);
  });
});
