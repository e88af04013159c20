import { compareBounds, type Link } from '../test/truth/compare-bounds.js';
import { likelyErrors, type LikelyModel } from '../test/truth/compare-likely.js';
import type { Fault } from '../test/truth/recorded-period.js';
import { truthCase } from '../test/truth/truth-case.js';
import { trueFlowNames, type TrueFlowName } from '../test/truth/true-flows.js';
import type { TargetKind } from '../test/truth/truth-targets.js';
import { spreadOf, type Spread } from './spread.js';

/** How wide bounds are in one kind of target. */
export interface WidthRow {
  readonly kind: TargetKind;
  /** Most less least as a share of the bag, of bags that truly are in the target. */
  readonly width: Spread;
  /** Of those, the share of bags that are said to be sure. */
  readonly sureShare: number;
  /** How many bags a target has on average, by most above 0 and in truth. */
  readonly possibleCount: number;
  readonly trueCount: number;
}

/** What plants with the same faults came to. */
export interface BoundsRow {
  readonly faults: readonly Fault[];
  readonly questionCount: number;
  readonly breachCount: number;
  readonly falseAlarms: number;
  readonly widths: readonly WidthRow[];
  readonly likely: readonly LikelyRow[];
}

/** The share of a pallet’s sugar that a model does not lay to the right bag, where the sugar truly moved in one way. */
export interface LikelyRow {
  readonly model: string;
  readonly flow: TrueFlowName;
  readonly error: Spread;
}

const kinds: readonly TargetKind[] = ['pallet', 'printed minutes', 'delivery', 'lot'];

/** Runs plants from seed 0 on, all with the same faults, and compares what is said with what is true. */
export function measureBounds(plantCount: number, faults: readonly Fault[], models: readonly LikelyModel[]): BoundsRow {
  const links: Link[] = [];
  const targetCounts = new Map<TargetKind, number>();
  const errors = new Map<string, number[]>();
  let [questionCount, breachCount, falseAlarms] = [0, 0, 0];
  for (let seed = 0; seed < plantCount; seed += 1) {
    const one = truthCase(seed, new Set(faults));
    const compared = compareBounds(one);
    links.push(...compared.links);
    questionCount += one.targets.length * one.bagGrams.size;
    breachCount += compared.breaches.length;
    falseAlarms += compared.falseAlarms;
    for (const { kind } of one.targets) targetCounts.set(kind, (targetCounts.get(kind) ?? 0) + 1);
    for (const model of models) {
      const key = keyOf(model, one.plant.flow);
      errors.set(key, [...(errors.get(key) ?? []), ...likelyErrors(one, model)]);
    }
  }
  const widths = kinds.map((kind) => widthsIn(kind, links, targetCounts.get(kind) ?? 0));
  const likely = models.flatMap((model) =>
    trueFlowNames.map((flow) => ({ model: model.name, flow, error: spreadOf(errors.get(keyOf(model, flow)) ?? []) })),
  );
  return { faults, questionCount, breachCount, falseAlarms, widths, likely };
}

const keyOf = (model: LikelyModel, flow: TrueFlowName): string => `${model.name} / ${flow}`;

function widthsIn(kind: TargetKind, links: readonly Link[], targetCount: number): WidthRow {
  const possible = links.filter((link) => link.kind === kind);
  const truly = possible.filter(({ isTrue }) => isTrue);
  return {
    kind,
    width: spreadOf(truly.map(({ width }) => width)),
    sureShare: truly.filter(({ isSure }) => isSure).length / truly.length,
    possibleCount: possible.length / targetCount,
    trueCount: truly.length / targetCount,
  };
}
