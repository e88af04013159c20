import { AddPackWeigher } from '../../fill-weight/add-pack-weigher.js';
import { SetSilence } from '../../fill-weight/silence/set-silence.js';
import type { Asked } from '../../journal/entry-draft.js';
import { AddMachine } from '../../people/add-machine.js';
import { headCountOf, weigherErrorMilligrams, weigherStepMilligrams } from '../life/pack-weighing.js';
import type { Give } from './demo-hand.js';

/** The weighers send every half hour. */
const silentAfterMinutes = 40;

/** A pack weigher behind the filler of each line. @returns its machine, by line */
export async function setUpWeighers(
  give: Give,
  asked: Asked,
  lines: ReadonlyMap<string, string>,
): Promise<ReadonlyMap<string, string>> {
  const machines = new Map<string, string>();
  for (const [line, lineId] of lines) {
    const { id: deviceId } = await give(AddMachine).execute(asked, { code: `weigher-line-${line.toLowerCase()}` });
    const { id } = await give(AddPackWeigher).execute(asked, {
      ...{ deviceId, lineId, code: `W${line}`, headCount: headCountOf(line), countsPacks: true, rejectsPacks: true },
      stepMilligrams: weigherStepMilligrams,
      maximumPermissibleErrorMilligrams: weigherErrorMilligrams,
    });
    await give(SetSilence).execute(asked, id, { silentAfterMinutes });
    machines.set(line, deviceId);
  }
  return machines;
}
