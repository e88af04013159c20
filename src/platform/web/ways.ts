import { mayDo, type Permission, type Role } from '../actor.js';

/** A way to a page: its address, the sentence that names it, and who may walk it. */
export interface Way {
  readonly href: string;
  readonly code: string;
  readonly permission: Permission;
}

/** The desks: each answers the questions of one of the people. */
export const desks: readonly Way[] = [
  { href: '/dryer', code: 'way-dryer', permission: 'fill-bags' },
  { href: '/line', code: 'way-line', permission: 'run-line' },
  { href: '/quality', code: 'way-quality', permission: 'decide' },
  { href: '/quality/results', code: 'way-results', permission: 'report-results' },
  { href: '/dispatch', code: 'way-dispatch', permission: 'keep-deliveries' },
  { href: '/dock', code: 'way-dock', permission: 'load-vehicles' },
  { href: '/today', code: 'way-today', permission: 'read' },
  { href: '/set-up', code: 'way-set-up', permission: 'set-up-plant' },
];

/** The records, in the product's order. */
export const records: readonly Way[] = [
  { href: '/open-points', code: 'way-open-points', permission: 'read' },
  { href: '/checks', code: 'way-checks', permission: 'read' },
  { href: '/interruptions', code: 'way-interruptions', permission: 'read-interruptions' },
  { href: '/bags', code: 'way-bags', permission: 'read' },
  { href: '/samples', code: 'way-samples', permission: 'read' },
  { href: '/holds', code: 'way-holds', permission: 'read' },
  { href: '/quality/reach', code: 'way-reach', permission: 'read-reach' },
  { href: '/quality/complaints', code: 'way-complaints', permission: 'read' },
  { href: '/quality/recalls', code: 'way-recalls', permission: 'read' },
  { href: '/runs', code: 'way-runs', permission: 'read' },
  { href: '/hoppers', code: 'way-hoppers', permission: 'read' },
  { href: '/pallets', code: 'way-pallets', permission: 'read' },
  { href: '/deliveries', code: 'way-deliveries', permission: 'read' },
  { href: '/accounts', code: 'way-accounts', permission: 'read' },
  { href: '/papers', code: 'way-papers', permission: 'read' },
  { href: '/paper-forms', code: 'way-paper-forms', permission: 'read' },
  { href: '/plant', code: 'way-plant', permission: 'read' },
  { href: '/journal', code: 'way-journal', permission: 'read' },
  { href: '/people', code: 'way-people', permission: 'keep-people' },
  { href: '/devices', code: 'way-devices', permission: 'keep-people' },
  { href: '/device', code: 'way-this-device', permission: 'read' },
];

/** Those of the ways that someone with these roles may walk. */
export function waysOf(ways: readonly Way[], roles: readonly Role[]): readonly Way[] {
  return ways.filter((way) => mayDo(roles, way.permission));
}

/** Where each role begins. Somebody with several begins at the first of them. */
const firstDesks: readonly (readonly [Role, string])[] = [
  ['line-lead', '/line'],
  ['quality-officer', '/quality'],
  ['dispatch-clerk', '/dispatch'],
  ['loader', '/dock'],
  ['dryer-operator', '/dryer'],
  ['lab-analyst', '/quality/results'],
  ['plant-manager', '/today'],
  ['administrator', '/set-up'],
  ['auditor', '/today'],
];

/** The desk at which somebody begins after signing in. */
export function firstDeskOf(roles: readonly Role[]): string {
  return firstDesks.find(([role]) => roles.includes(role))?.[1] ?? '/';
}
