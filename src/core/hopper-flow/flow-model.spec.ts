import { describe, expect, it } from '@jest/globals';
import { describeWithChecks, readChecks } from '../../../test/support/checks.js';
import { defaultFlowModel, flowByModel, type FlowModel } from './flow-model.js';
import { exactMass, type HopperEvent } from './hopper-event.js';

const addition = (id: string, grams: number): HopperEvent => ({ kind: 'addition', id, mass: exactMass(grams) });
const exit = (id: string, grams: number): HopperEvent => ({ kind: 'exit', id, mass: exactMass(grams) });
const period = {
  capacityGrams: null,
  events: [addition('heel', 500), addition('A', 1000), exit('pallet', 1000)],
};
const origin = { trialId: 'trial 7', holdUpStandardGrams: 12, zoneCountStandard: 0.3 };
const zones = { zoneCount: 1, holdUpGrams: 500 };

describe('a flow model', () => {
  it.each<[FlowModel, number]>([
    [defaultFlowModel, 500],
    [{ kind: 'pour-and-drain' }, (500 / 1500) * 1000],
    [{ kind: 'stirred-zones', zones, origin }, 500 * (1 - Math.exp(-2))],
  ])('%j says its own of the heel in a pallet', (model, heelGrams) => {
    const { sources } = flowByModel(period, model).compositionOf('pallet');
    expect(sources.find(({ additionId }) => additionId === 'heel')?.grams).toBeCloseTo(heelGrams, 9);
  });

  it('of stirred zones cannot be chosen without a trial and its uncertainty', () => {
    for (const wrong of [{ trialId: ' ' }, { holdUpStandardGrams: 0 }, { zoneCountStandard: NaN }]) {
      const model: FlowModel = { kind: 'stirred-zones', zones, origin: { ...origin, ...wrong } };
      expect(() => flowByModel(period, model)).toThrow(RangeError);
    }
  });
});

/** Where each table of published values is compared; what is not says why. */
const comparedIn: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  'quality/genealogy_tests.json': {
    washout_heel_share_1_minus_F: 'residence-time.spec.ts',
    plug_limit_F_at_theta: 'residence-time.spec.ts',
    S1_const_holdup_500kg: 'residence-time.spec.ts, stirred-zones.spec.ts',
    S1_plug_500kg: 'first-in-first-out.spec.ts, residence-time.spec.ts',
    S1_plug300_plus_CSTR200: 'residence-time.spec.ts, stirred-zones.spec.ts',
    closure_lotA: 'residence-time.spec.ts, stirred-zones.spec.ts',
    tail_lotA_M500_L1000: 'head-and-tail.spec.ts',
    head_M500: 'head-and-tail.spec.ts',
    dump_drain_mixed_H300_B1000: 'stirred-zones.spec.ts',
    dump_drain_k_for_eps: 'stirred-zones.spec.ts',
    variable_holdup: 'head-and-tail.spec.ts',
    dispersion_to_N: 'residence-time.spec.ts',
    E_theta: 'residence-time.spec.ts',
    foreign_body_prob_lotA_pack: 'stirred-zones.spec.ts',
    pallets_touched_by_lotB: 'stirred-zones.spec.ts',
    bypass_dead:
      'nowhere: no flow model here has a bypass or a dead zone; what may stick to walls is in most, not in likely',
  },
  'quality/extra_tests.json': {
    calibration_step: 'tracer-trial.spec.ts',
    dispersion: 'nowhere here: how far lots are scattered is counted from links, whatever the flow model',
    recall: 'nowhere here: the counts of a recall know no flow model',
  },
};

describeWithChecks('the published values', () => {
  it('are each compared somewhere, or it is said why not', () => {
    for (const [file, tables] of Object.entries(comparedIn)) {
      expect(Object.keys(readChecks<object>(file)).sort()).toEqual(Object.keys(tables).sort());
    }
  });
});
