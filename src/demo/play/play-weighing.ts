import { emptyWeight } from '../../fill-weight/incoming/sent-weight.js';
import { ReadWeights } from '../../fill-weight/incoming/read-weights.js';
import { CorrectTare } from '../../fill-weight/kept/correct-tare.js';
import { packWeigherOfDevice, type PackWeigherRow } from '../../fill-weight/pack-weighers.js';
import { ReceiveWeights } from '../../fill-weight/receive-weights.js';
import type { SentPacks, WeighingAct } from '../life/act.js';
import { idIn, type DemoHand } from '../set-up/demo-hand.js';
import type { Players } from './players.js';

/** The weighers count in one series: none of them began again. */
const series = '1';

export const weighingPlayers: Players<WeighingAct> = {
  'send-weights': async (hand, { line, run, packs }) => {
    const weigher = await weigherOf(hand, line);
    const { siteId, deviceId } = weigher;
    const actor = { siteId, personId: null, deviceId, roles: ['device'] } as const;
    await hand
      .give(ReceiveWeights)
      .execute(
        { actor, route: 'demo', key: null },
        { ...{ weigher, series, line: null, skipsFaults: false }, read: readOf(packs), run: hand.idOf('run', run) },
      );
  },
  'correct-tare': async (hand, { line, run, fromSequence, toSequence, addedMilligrams, reason }, { by }) => {
    const { id: weigherId } = await weigherOf(hand, line);
    const range = { weigherId, series, fromSequence, toSequence };
    const form = { runId: hand.idOf('run', run), ...range, addedMilligrams, reason };
    await hand.give(CorrectTare).execute(hand.asked(by), form);
  },
};

async function weigherOf(hand: DemoHand, line: string): Promise<PackWeigherRow> {
  const weigher = await packWeigherOfDevice(hand.reader, idIn(hand.plant.weighers, line));
  if (weigher === null) throw new RangeError(`Line ${line} has no weigher`);
  return weigher;
}

/** As if its lines had been read: the demo sends hundreds of thousands. */
function readOf({ sequences, atCentiseconds, netMilligrams, heads, isRejected }: SentPacks): ReadWeights {
  const read = new ReadWeights({ kind: 'ndjson' });
  const weight = emptyWeight();
  sequences.forEach((sequence, place) => {
    weight.sequence = sequence;
    weight.atCentiseconds = atCentiseconds[place] ?? 0;
    weight.netMilligrams = netMilligrams[place] ?? 0;
    weight.head = heads[place] ?? 0;
    weight.rejected = isRejected[place] ?? 0;
    read.rows.add(weight, place + 1);
  });
  read.lineCount = sequences.length;
  return read;
}
