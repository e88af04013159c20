import type { Role } from '../../platform/actor.js';
import type { Language } from '../../platform/sentences/language.js';
import type { Doer } from '../life/act.js';

/** Somebody of the demo, invented like all names here. */
export interface DemoPerson {
  /** What the acts call them; null where they do nothing in the demo. */
  readonly doer: Exclude<Doer, 'counter'> | null;
  readonly code: string;
  readonly name: string;
  readonly role: Role;
  /** Shown at the start. */
  readonly password: string;
  /** For the shared tablets and handhelds, with a badge; null for those who work at a desk alone. */
  readonly pin: string | null;
  /** English where absent. */
  readonly language?: Language;
}

export const demoPeople: readonly DemoPerson[] = [
  {
    doer: 'dryer-operator',
    code: 'ilka',
    name: 'Ilka Brandeis',
    role: 'dryer-operator',
    password: 'warm air rises',
    pin: '4071',
  },
  { doer: 'lead-M', code: 'tomas', name: 'Tomas Weir', role: 'line-lead', password: 'two lines run', pin: '5829' },
  {
    doer: 'lead-A',
    code: 'ruth',
    name: 'Ruth Ansel',
    role: 'line-lead',
    password: 'tarde en dos turnos',
    pin: '3746',
    language: 'es',
  },
  {
    doer: 'lead-N',
    code: 'emil',
    name: 'Emil Hartog',
    role: 'line-lead',
    password: 'la noche no para',
    pin: '9153',
    language: 'es',
  },
  { doer: 'loader', code: 'piet', name: 'Piet Sondern', role: 'loader', password: 'dock by dock', pin: '2680' },
  {
    doer: 'analyst',
    code: 'nora',
    name: 'Nora Lindqvist',
    role: 'lab-analyst',
    password: 'dry in the oven',
    pin: '7394',
  },
  {
    doer: 'quality',
    code: 'agnes',
    name: 'Agnes Tallow',
    role: 'quality-officer',
    password: 'released or not',
    pin: '6018',
  },
  {
    doer: 'clerk',
    code: 'oskar',
    name: 'Oskar Penn',
    role: 'dispatch-clerk',
    password: 'papers that match',
    pin: '8427',
  },
  {
    doer: 'manager',
    code: 'helen',
    name: 'Helen Marsh',
    role: 'plant-manager',
    password: 'does it add up',
    pin: '1695',
  },
  { doer: null, code: 'viktor', name: 'Viktor Amsel', role: 'auditor', password: 'show me the trail', pin: null },
  { doer: null, code: 'admin', name: 'Mara Quill', role: 'administrator', password: 'keys of the house', pin: null },
];

/** The length of every badge, in the characters of base32. */
const badgeLength = 26;

/** The badge of a person of the demo. A real one is drawn and told to nobody; these are printed at every start. */
export function demoBadgeOf({ code }: DemoPerson): string {
  return `DEMO${code.toUpperCase()}`.padEnd(badgeLength, '7');
}
