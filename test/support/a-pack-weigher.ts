import { AddPackWeigher } from '../../src/fill-weight/add-pack-weigher.js';
import type { AddPackWeigherForm } from '../../src/fill-weight/pack-weigher.form.js';
import { AddMachine } from '../../src/people/add-machine.js';
import type { Plant } from './a-plant.js';
import { asking, type TestHouse } from './house.js';

/** A pack weigher on a line, with the token of its machine. */
export interface TestWeigher {
  readonly weigherId: string;
  readonly deviceId: string;
  readonly token: string;
}

let weigherCount = 0;

/** Adds a machine and sets it up as a pack weigher, on the first line unless asked otherwise. */
export async function aPackWeigher(
  house: TestHouse,
  plant: Plant,
  wishes: Partial<AddPackWeigherForm> = {},
): Promise<TestWeigher> {
  weigherCount += 1;
  const machine = await house.get(AddMachine).execute(asking(plant.actor), { code: `pack-weigher-${weigherCount}` });
  const form = {
    deviceId: machine.id,
    lineId: plant.lineIds[0],
    code: `W${weigherCount}`,
    stepMilligrams: 200,
    maximumPermissibleErrorMilligrams: 500,
    headCount: 14,
    countsPacks: true,
    rejectsPacks: true,
    ...wishes,
  };
  const { id } = await house.get(AddPackWeigher).execute(asking(plant.actor), form);
  return { weigherId: id, deviceId: machine.id, token: machine.token ?? '' };
}

/** A line of JSON as a weigher sends it; the weight follows from the sequence unless asked otherwise. */
export function weightLine(
  house: TestHouse,
  sequence: number,
  wishes: {
    readonly netGrams?: number;
    readonly at?: string;
    readonly run?: string;
    readonly line?: string;
    readonly rejected?: boolean;
    readonly head?: number | undefined;
  },
): string {
  const netGrams = 2000 + ((sequence * 7919) % 200) / 10;
  return JSON.stringify({ sequence, at: house.clock.now(), netGrams, head: sequence % 14, rejected: false, ...wishes });
}

/** Packs as a weigher sends them. */
export interface SentPacks {
  readonly run: string;
  /** The net of each pack, one after the other. */
  readonly netGrams: readonly number[];
  readonly fromAt: string;
  readonly everySeconds?: number;
  readonly fromSequence?: number;
  readonly series?: string;
}

/** Sends weights over HTTP, with the token of the weigher's machine. */
export async function packsWeighed(house: TestHouse, weigher: TestWeigher, sent: SentPacks): Promise<void> {
  const { run, netGrams, fromAt, everySeconds = 1, fromSequence = 1, series = '1' } = sent;
  const lines = netGrams.map((net, place) => {
    const at = new Date(Date.parse(fromAt) + place * everySeconds * 1000).toISOString();
    return weightLine(house, fromSequence + place, { run, at, netGrams: net });
  });
  const answer = await house.app
    .getHttpAdapter()
    .getInstance()
    .inject({
      method: 'POST',
      url: `/api/fill-weights?series=${series}`,
      headers: { authorization: `Bearer ${weigher.token}`, 'content-type': 'application/x-ndjson' },
      payload: lines.join('\n'),
    });
  if (answer.statusCode !== 201) throw new Error(`weights were answered ${answer.statusCode}: ${answer.body}`);
}
