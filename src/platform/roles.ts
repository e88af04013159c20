/** What a person (or device) is here to do. */
export const roles = [
  'dryer-operator',
  'line-lead',
  'loader',
  'lab-analyst',
  'quality-officer',
  'dispatch-clerk',
  'plant-manager',
  'auditor',
  'administrator',
  'device',
] as const;
export type Role = (typeof roles)[number];
