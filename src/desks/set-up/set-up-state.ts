import type { BagTypeRow } from '../../plant/bag-types.js';
import { bagTypesOf, usualNetOf } from '../../plant/bag-types.js';
import { ruleSetAt } from '../../plant/plant-facts.js';
import type { TipAtRiskRules, VehicleCheckRules } from '../../plant/rule-kinds.js';
import { allOf, type WholePlant } from '../../plant/whole-plant.js';
import type { Role } from '../../platform/actor.js';
import { toWhole } from '../../platform/database/stored-values.js';
import type { ReadFrom } from '../../platform/database/reading.js';

/** The steps in which a plant is set up, each after those that it builds on. */
export const steps = [
  'site',
  'shifts',
  'scales',
  'bag-types',
  'dryers',
  'hoppers',
  'lines',
  'grades',
  'formats',
  'places',
  'customers',
  'rules',
  'people',
  'devices',
] as const;
export type Step = (typeof steps)[number];

/** All that is set up, and what the steps need to know of it. */
export interface SetUpState {
  readonly plant: WholePlant;
  readonly bagTypes: readonly BagTypeRow[];
  readonly usualNets: ReadonlyMap<string, { readonly leastNetGrams: number; readonly mostNetGrams: number }>;
  readonly vehicleCheck: VehicleCheckRules | null;
  readonly tipAtRisk: TipAtRiskRules | null;
  /** How many people hold each role. */
  readonly held: ReadonlyMap<Role, number>;
  readonly deviceCount: number;
}

export async function setUpState(from: ReadFrom, siteId: string, now: string): Promise<SetUpState> {
  const plant = await allOf(from, siteId, now);
  const usualNets = new Map<string, { leastNetGrams: number; mostNetGrams: number }>();
  for (const { id } of plant.grades) {
    const net = await usualNetOf(from, id);
    if (net !== null) usualNets.set(id, net);
  }
  const held = await from.sql<{ role: Role; count: number | string }>`
    SELECT h."role", COUNT(*) AS "count" FROM "role_holding" h JOIN "person" p ON p."id" = h."person_id"
    WHERE p."site_id" = ${siteId} AND h."voided_by" IS NULL GROUP BY h."role"`;
  const [devices] = await from.sql<{ count: number | string }>`
    SELECT COUNT(*) AS "count" FROM "device" d JOIN "device_token" t ON t."device_id" = d."id"
    WHERE d."site_id" = ${siteId}`;
  return {
    plant,
    bagTypes: await bagTypesOf(from, siteId),
    usualNets,
    vehicleCheck: await ruleSetAt<VehicleCheckRules>(from, siteId, 'vehicle-check', now),
    tipAtRisk: await ruleSetAt<TipAtRiskRules>(from, siteId, 'tip-at-risk', now),
    held: new Map(held.map(({ role, count }) => [role, toWhole(count)])),
    deviceCount: toWhole(devices?.count ?? 0),
  };
}

/** What is missing at a step: sentence codes with their facts, in the order in which they matter; none: it is done. */
export function missingAt(step: Step, state: SetUpState): readonly Missing[] {
  return [...checks[step](state)];
}

export interface Missing {
  readonly code: string;
  readonly facts?: Readonly<Record<string, string | number>>;
}

/** The roles without which the product does not get through the house. */
const neededRoles: readonly Role[] = [
  'dryer-operator',
  'line-lead',
  'lab-analyst',
  'quality-officer',
  'dispatch-clerk',
];

const none = (rows: readonly unknown[], code: string): readonly Missing[] => (rows.length === 0 ? [{ code }] : []);

const checks: Readonly<Record<Step, (state: SetUpState) => readonly Missing[]>> = {
  site: ({ plant }) => (plant.site.companyPrefix.startsWith('952') ? [{ code: 'missing-own-numbers' }] : []),
  shifts: ({ plant }) => (plant.shiftPattern === null ? [{ code: 'missing-shifts' }] : []),
  scales: ({ plant }) => [
    ...none(plant.scales, 'missing-scale'),
    ...plant.scales
      .filter(({ lastCheckedAt }) => lastCheckedAt === null)
      .map(({ scale }) => ({ code: 'missing-scale-check', facts: { scale: scale.code } })),
  ],
  'bag-types': ({ bagTypes }) => none(bagTypes, 'missing-bag-type'),
  dryers: ({ plant }) => none(plant.dryers, 'missing-dryer'),
  hoppers: ({ plant }) => none(plant.hoppers, 'missing-hopper'),
  lines: ({ plant }) => [
    ...none(plant.lines, 'missing-line'),
    ...plant.lines
      .filter(({ hopperId }) => hopperId === null)
      .map(({ code }) => ({ code: 'missing-line-hopper', facts: { line: code } })),
  ],
  grades: ({ plant }) => none(plant.grades, 'missing-grade'),
  formats: ({ plant }) => none(plant.formats, 'missing-format'),
  places: ({ plant }) => none(plant.places, 'missing-place'),
  customers: ({ plant }) => none(plant.customers, 'missing-customer'),
  rules: (state) => [
    ...(state.vehicleCheck === null ? [{ code: 'missing-vehicle-check' }] : []),
    ...(isRiskLimitMissing(state) ? [{ code: 'missing-risk-limits' }] : []),
  ],
  people: ({ held }) =>
    neededRoles
      .filter((role) => (held.get(role) ?? 0) === 0)
      .map((role) => ({ code: 'missing-role', facts: { role } })),
  devices: ({ deviceCount }) => (deviceCount === 0 ? [{ code: 'missing-device' }] : []),
};

/** A grade may be tipped at risk, but nobody has said how much of it. */
export function isRiskLimitMissing({ plant, tipAtRisk }: SetUpState): boolean {
  return tipAtRisk === null && plant.grades.some(({ tippingRule }) => tippingRule === 'tip-at-risk');
}

/** How many things are set up at a step; null where it is one thing. */
export function countAt(step: Step, { plant, bagTypes, held, deviceCount }: SetUpState): number | null {
  const counts: Partial<Record<Step, number>> = {
    scales: plant.scales.length,
    'bag-types': bagTypes.length,
    dryers: plant.dryers.length,
    hoppers: plant.hoppers.length,
    lines: plant.lines.length,
    grades: plant.grades.length,
    formats: plant.formats.length,
    places: plant.places.length,
    customers: plant.customers.length,
    people: [...held.values()].reduce((sum, count) => sum + count, 0),
    devices: deviceCount,
  };
  return counts[step] ?? null;
}

export function stepAfter(step: Step): Step | null {
  return steps[steps.indexOf(step) + 1] ?? null;
}

export function stepBefore(step: Step): Step | null {
  return steps[steps.indexOf(step) - 1] ?? null;
}
