import { AddCheckPlan } from '../../src/line-checks/add-check-plan.js';
import type { AddCheckPlanForm } from '../../src/line-checks/check-plan.form.js';
import { CheckLine } from '../../src/line-checks/check-line.js';
import type { CheckLineForm } from '../../src/line-checks/line-check.form.js';
import type { CheckAnswer } from '../../src/line-checks/record-check.js';
import type { Plant } from './a-plant.js';
import { asking, type TestHouse } from './house.js';

/** A weigher on the first line, checked every hour with one test pack of 2 kg; all can be wished otherwise. */
export async function aCheckPlan(
  house: TestHouse,
  plant: Plant,
  wishes: Partial<AddCheckPlanForm> = {},
): Promise<string> {
  const form: AddCheckPlanForm = {
    lineId: plant.lineIds[0],
    kind: 'weigher',
    station: 'Weigher',
    everyMinutes: 60,
    graceMinutes: 10,
    testPieces: [{ code: 'two', says: 'Test pack 2 kg', knownMilligrams: 2_000_000, allowedMilligrams: 2000 }],
    ...wishes,
  };
  return (await house.get(AddCheckPlan).execute(asking(plant.actor), form)).planId;
}

/** A good check now, of a plan with the one piece `two`. */
export function passed(house: TestHouse, plant: Plant, planId: string, wishes: Partial<CheckLineForm> = {}) {
  return check(house, plant, planId, { results: [{ code: 'two', passed: true }], ...wishes });
}

/** A failed one, the line stopped at once. */
export function failed(house: TestHouse, plant: Plant, planId: string, wishes: Partial<CheckLineForm> = {}) {
  const results = [{ code: 'two', passed: false }];
  return check(house, plant, planId, { results, action: 'line-stopped', ...wishes });
}

function check(house: TestHouse, plant: Plant, planId: string, form: CheckLineForm): Promise<CheckAnswer> {
  return house.get(CheckLine).execute(asking(plant.actor), planId, form);
}
