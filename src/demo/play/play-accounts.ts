import { SignAccount } from '../../reconciliation/sign-account.js';
import type { AccountAct } from '../life/act.js';
import { idIn } from '../set-up/demo-hand.js';
import type { Players } from './players.js';

export const accountPlayers: Players<AccountAct> = {
  'sign-account': async (hand, { hopper, fromAt, untilAt }, { by }) => {
    const form = { hopper: idIn(hand.plant.hoppers, hopper), fromAt, untilAt };
    const statedLoss = 'Nothing was spilt that we know of; the difference is not explained';
    await hand.give(SignAccount).execute(hand.asked(by), { ...form, statedLoss });
  },
};
