import type { Asked } from '../../journal/entry-draft.js';
import { AddCheckPlan } from '../../line-checks/add-check-plan.js';
import type { AddCheckPlanForm } from '../../line-checks/check-plan.form.js';
import { checkStations, type CheckStation } from '../life/check-stations.js';
import type { Give } from './demo-hand.js';

/** Spheres, weights and intervals are invented, as the whole plant is: a real one sets its own. */
const plans: Readonly<Record<CheckStation, Omit<AddCheckPlanForm, 'lineId'>>> = {
  weigher: {
    kind: 'weigher',
    station: 'Weigher',
    everyMinutes: 60,
    graceMinutes: 10,
    testPieces: [{ code: 'pack', says: 'Test pack A', knownMilligrams: 1_012_000, allowedMilligrams: 2000 }],
  },
  detector: {
    kind: 'metal-detection',
    station: 'Metal detector',
    everyMinutes: 120,
    graceMinutes: 10,
    testPieces: [
      { code: 'fe', says: 'Red card', material: 'ferrous', sphereMicrometres: 2000 },
      { code: 'nfe', says: 'Blue card', material: 'non-ferrous', sphereMicrometres: 2500 },
      { code: 'sus', says: 'Green card', material: 'stainless', sphereMicrometres: 3500 },
    ],
  },
  sieve: { kind: 'sieve', station: 'Sieve under the hopper', graceMinutes: 30, events: ['shift-start'] },
  seal: { kind: 'seal', station: 'Top seal', graceMinutes: 30, events: ['shift-start', 'film-change'] },
  code: { kind: 'printed-code', station: 'Code on the pack', graceMinutes: 40, events: ['shift-start', 'run-start'] },
};

/** The plans of checks of every line, and of torn bags at its tip; by line and station. */
export async function setUpChecks(
  give: Give,
  asked: Asked,
  lines: ReadonlyMap<string, string>,
): Promise<ReadonlyMap<string, string>> {
  const ids = new Map<string, string>();
  for (const [code, lineId] of lines) {
    for (const station of checkStations) {
      const { planId } = await give(AddCheckPlan).execute(asked, { ...plans[station], lineId });
      ids.set(`${code} ${station}`, planId);
    }
    const tip = { kind: 'torn-bag', station: 'Bag at the tip', graceMinutes: 0 } as const;
    await give(AddCheckPlan).execute(asked, { ...tip, lineId });
  }
  return ids;
}
