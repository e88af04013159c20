import { SetMetadata } from '@nestjs/common';
import { roles, type Role } from './roles.js';

export { roles, type Role } from './roles.js';

/** Who acts, and on what: each change carries both. Rooms that stand before `people` know persons only so. */
export interface Actor {
  readonly siteId: string;
  readonly personId: string | null;
  readonly deviceId: string | null;
  readonly roles: readonly Role[];
}

const producing: readonly Role[] = ['line-lead', 'plant-manager', 'device'];
const everyoneButAuditors: readonly Role[] = roles.filter((role) => role !== 'auditor' && role !== 'device');

/**
 * Who may do what, for the whole house. A route names one of these with `@May`; a route that names none is refused
 * when the server starts.
 */
export const permissions = {
  'set-up-plant': ['administrator', 'plant-manager'],
  'keep-people': ['administrator'],
  'check-scales': ['dryer-operator', 'line-lead', 'quality-officer', 'plant-manager'],
  'plan-checks': ['quality-officer', 'administrator', 'plant-manager'],
  'check-line': ['line-lead', 'quality-officer', 'plant-manager'],
  'fill-bags': ['dryer-operator', 'plant-manager', 'device'],
  'receive-goods': ['dryer-operator', 'dispatch-clerk', 'plant-manager'],
  'take-samples': ['dryer-operator', 'line-lead', 'lab-analyst', 'quality-officer', 'plant-manager'],
  'report-results': ['lab-analyst', 'quality-officer', 'device'],
  decide: ['quality-officer'],
  'place-holds': everyoneButAuditors,
  'lift-holds': ['quality-officer'],
  'take-complaints': everyoneButAuditors,
  'handle-complaints': ['quality-officer'],
  'run-recalls': ['quality-officer'],
  'run-line': producing,
  'count-packs': ['line-lead', 'plant-manager', 'device'],
  'tip-bags': producing,
  'prove-empty': ['line-lead', 'quality-officer', 'plant-manager'],
  'keep-flow-models': ['quality-officer', 'plant-manager', 'administrator'],
  'keep-paper-forms': ['line-lead', 'quality-officer', 'plant-manager'],
  'weigh-packs': ['line-lead', 'lab-analyst', 'quality-officer', 'plant-manager', 'device'],
  'send-fill-weights': ['device'],
  'bring-weight-files': ['line-lead', 'quality-officer', 'plant-manager', 'administrator'],
  'build-pallets': ['line-lead', 'dispatch-clerk', 'loader', 'plant-manager', 'device'],
  'move-pallets': ['line-lead', 'dispatch-clerk', 'loader', 'plant-manager', 'device'],
  'move-bags': ['dryer-operator', 'line-lead', 'dispatch-clerk', 'loader', 'plant-manager', 'device'],
  'keep-deliveries': ['dispatch-clerk', 'plant-manager'],
  'load-vehicles': ['dispatch-clerk', 'loader', 'plant-manager'],
  'close-deliveries': ['dispatch-clerk'],
  'sign-accounts': ['line-lead', 'plant-manager'],
  'read-reach': ['quality-officer', 'plant-manager', 'auditor'],
  'read-interruptions': ['quality-officer', 'plant-manager', 'administrator', 'auditor'],
  'answer-open-points': everyoneButAuditors,
  correct: ['dryer-operator', 'line-lead', 'lab-analyst', 'quality-officer', 'dispatch-clerk', 'plant-manager'],
  /** Whose work is at the coder, and who judges what its codes reach. */
  'correct-coder-clocks': ['line-lead', 'quality-officer', 'plant-manager'],
  read: roles,
} as const satisfies Record<string, readonly Role[]>;
export type Permission = keyof typeof permissions;

/** Whether someone with these roles may do this. */
export function mayDo(held: readonly Role[], permission: Permission): boolean {
  const allowed: readonly Role[] = permissions[permission];
  return held.some((role) => allowed.includes(role));
}

export const permissionKey = 'packthread:permission';

/** States, beside a route, which permission it asks for. */
export const May = (permission: Permission): MethodDecorator & ClassDecorator => SetMetadata(permissionKey, permission);

/** States, beside a route, that anyone may call it without having signed in. */
export const AnyoneMay = (): MethodDecorator & ClassDecorator => SetMetadata(permissionKey, 'anyone');

export const queueKey = 'packthread:may-be-queued';

/** States, beside a route, that a device may keep its form while the network is away and send it later, as happened. */
export const MayBeQueued = (): MethodDecorator => SetMetadata(queueKey, true);
