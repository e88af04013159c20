import { ReportResult } from '../../laboratory/report-result.js';
import { TakeSample } from '../../laboratory/take-sample.js';
import type { LaboratoryAct } from '../life/act.js';
import { idIn } from '../set-up/demo-hand.js';
import { methods } from '../set-up/set-up-goods.js';
import type { Players } from './players.js';

export const laboratoryPlayers: Players<LaboratoryAct> = {
  'sample-hour': async (hand, { sample, dryer, fromAt }, { by }) => {
    const form = { standsFor: 'hour', dryerId: idIn(hand.plant.dryers, dryer), fromAt } as const;
    const { id } = await hand.give(TakeSample).execute(hand.asked(by), form);
    hand.remember('sample', sample, id);
  },
  'sample-bag': async (hand, { sample, bag, takenAt }, { by }) => {
    const form = { standsFor: 'bag', bag: hand.idOf('bag', bag), takenAt } as const;
    const { id } = await hand.give(TakeSample).execute(hand.asked(by), form);
    hand.remember('sample', sample, id);
  },
  report: async (hand, { sample, property, amount, isRetest, analysedAt }, { by }) => {
    await hand.give(ReportResult).execute(hand.asked(by), {
      sample: hand.idOf('sample', sample),
      method: methods[property],
      ...{ property, amount, isRetest, analysedAt },
    });
  },
};
