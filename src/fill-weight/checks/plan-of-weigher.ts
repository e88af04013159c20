import type { CheckPlanRow } from '../../line-checks/check-plan-rows.js';
import { plansOfLine } from '../../line-checks/check-plans.js';
import { runOfLineAt } from '../../packing/packing-runs.js';
import type { Instant } from '../../platform/clock.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { Refusal } from '../../platform/refusal.js';
import { packWeighersOf, type PackWeigherRow } from '../pack-weighers.js';

/**
 * The plan that a weigher's check of its own is made by: of its line, in force then and for what the line packed. The
 * check names the station; else it is the one that is called like the weigher, or the only one where no other weigher
 * stands on the line: one weigher must never vouch for another.
 *
 * @throws {Refusal} `weigher-check-not-planned`, `weigher-check-which-plan`
 */
export async function planOfWeigher(
  from: ReadFrom,
  weigher: PackWeigherRow,
  { at, station }: { readonly at: Instant; readonly station: string | null },
): Promise<CheckPlanRow> {
  const run = await runOfLineAt(from, weigher.lineId, at);
  const plans = (await plansOfLine(from, weigher.lineId, at)).filter(
    ({ kind, formatId }) => kind === 'weigher' && (run === null || formatId === null || formatId === run.formatId),
  );
  const called = (name: string): readonly CheckPlanRow[] =>
    plans.filter((plan) => plan.station.toLowerCase() === name.toLowerCase());
  const facts = { line: weigher.lineCode, weigher: weigher.code };
  if (station !== null) {
    return oneOf(called(station)) ?? refuse('weigher-check-not-planned', { ...facts, station });
  }
  const own = oneOf(called(weigher.code));
  if (own !== null) return own;
  if (plans.length === 0) return refuse('weigher-check-not-planned', { ...facts, station: weigher.code });
  const others = (await packWeighersOf(from, weigher.siteId)).filter(({ lineId }) => lineId === weigher.lineId);
  const stations = [...new Set(plans.map((plan) => plan.station))];
  const [only] = others.length === 1 && stations.length === 1 ? stations : [];
  const told = only === undefined ? null : oneOf(called(only));
  return told ?? refuse('weigher-check-which-plan', { ...facts, stations: stations.join(', ') });
}

/** Of plans of one station the one of the format before the one of all formats. */
function oneOf(plans: readonly CheckPlanRow[]): CheckPlanRow | null {
  return plans.find(({ formatId }) => formatId !== null) ?? plans[0] ?? null;
}

function refuse(code: string, facts: Readonly<Record<string, string>>): never {
  throw new Refusal(code, facts);
}
