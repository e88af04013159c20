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
  /** English where absent. */
  readonly language?: Language;
}

export const demoPeople: readonly DemoPerson[] = [
  { doer: 'dryer-operator', code: 'ilka', name: 'Ilka Brandeis', role: 'dryer-operator', password: 'warm air rises' },
  { doer: 'lead-M', code: 'tomas', name: 'Tomas Weir', role: 'line-lead', password: 'two lines run' },
  {
    doer: 'lead-A',
    code: 'ruth',
    name: 'Ruth Ansel',
    role: 'line-lead',
    password: 'tarde en dos turnos',
    language: 'es',
  },
  {
    doer: 'lead-N',
    code: 'emil',
    name: 'Emil Hartog',
    role: 'line-lead',
    password: 'la noche no para',
    language: 'es',
  },
  { doer: 'loader', code: 'piet', name: 'Piet Sondern', role: 'loader', password: 'dock by dock' },
  { doer: 'analyst', code: 'nora', name: 'Nora Lindqvist', role: 'lab-analyst', password: 'dry in the oven' },
  { doer: 'quality', code: 'agnes', name: 'Agnes Tallow', role: 'quality-officer', password: 'released or not' },
  { doer: 'clerk', code: 'oskar', name: 'Oskar Penn', role: 'dispatch-clerk', password: 'papers that match' },
  { doer: 'manager', code: 'helen', name: 'Helen Marsh', role: 'plant-manager', password: 'does it add up' },
  { doer: null, code: 'viktor', name: 'Viktor Amsel', role: 'auditor', password: 'show me the trail' },
  { doer: null, code: 'admin', name: 'Mara Quill', role: 'administrator', password: 'keys of the house' },
];
