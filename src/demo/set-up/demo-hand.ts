import type { Asked } from '../../journal/entry-draft.js';
import type { Actor, Role } from '../../platform/actor.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import type { Doer } from '../life/act.js';
import type { FormatCode, GradeCode } from '../life/demo-plan.js';
import type { DemoDevice } from './demo-device.js';

/** The records of the plant by the demo's own codes. */
export interface PlantIds {
  readonly siteId: string;
  readonly dryers: ReadonlyMap<string, string>;
  readonly hoppers: ReadonlyMap<string, string>;
  readonly lines: ReadonlyMap<string, string>;
  /** By line. */
  readonly coders: ReadonlyMap<string, string>;
  readonly grades: ReadonlyMap<GradeCode, string>;
  readonly formats: ReadonlyMap<FormatCode, string>;
  readonly scales: ReadonlyMap<string, string>;
  readonly places: ReadonlyMap<string, string>;
  readonly customers: readonly string[];
  /** The machines of the pack weighers, by line. */
  readonly weighers: ReadonlyMap<string, string>;
  /** By line and station. */
  readonly checkPlans: ReadonlyMap<string, string>;
}

/** Gives a class of the house, by the house's own wiring. */
export type Give = <Kind>(kind: abstract new (...given: never[]) => Kind) => Kind;

/** Somebody before anybody is known: the house sets itself up. */
export function askedByHouse(siteId: string, ...roles: readonly Role[]): Asked {
  return { actor: { siteId, personId: null, deviceId: null, roles }, route: 'demo', key: null };
}

/** The hand that acts in the house for the people of the demo, and what it has to remember. */
export class DemoHand {
  /** Ids in the house of what the acts call by keys of their own: bags, runs, tips, pallets … */
  private readonly known = new Map<string, string>();

  constructor(
    readonly give: Give,
    readonly reader: ReadFrom,
    readonly plant: PlantIds,
    private readonly actors: ReadonlyMap<Doer, Actor>,
    readonly devices: readonly DemoDevice[],
  ) {}

  asked(by: Doer): Asked {
    const actor = this.actors.get(by);
    if (actor === undefined) throw new RangeError(`Nobody does what ${by} does`);
    return { actor, route: 'demo', key: null };
  }

  personId(by: Doer): string {
    return this.asked(by).actor.personId ?? '';
  }

  remember(kind: string, key: string, id: string): void {
    this.known.set(`${kind} ${key}`, id);
  }

  idOf(kind: string, key: string): string {
    const id = this.known.get(`${kind} ${key}`);
    if (id === undefined) throw new RangeError(`The house knows no ${kind} ${key}`);
    return id;
  }

  /** All of a kind, the demo's key first. */
  allOf(kind: string): readonly (readonly [string, string])[] {
    const prefix = `${kind} `;
    return [...this.known].flatMap(([name, id]) =>
      name.startsWith(prefix) ? [[name.slice(prefix.length), id] as const] : [],
    );
  }
}

/** What the plant calls a record; a code that it does not have is a fault of the demo. */
export function idIn<Code extends string>(ids: ReadonlyMap<Code, string>, code: Code): string {
  const id = ids.get(code);
  if (id === undefined) throw new RangeError(`The plant has no ${code}`);
  return id;
}
