import { BuildPallet } from '../../pallets/build-pallet.js';
import { CheckPalletLabel } from '../../pallets/check-pallet-label.js';
import { MovePallet } from '../../pallets/move-pallet.js';
import { SplitPallet } from '../../pallets/split-pallet.js';
import type { PalletAct } from '../life/act.js';
import { idIn } from '../set-up/demo-hand.js';
import type { Players } from './players.js';

export const palletPlayers: Players<PalletAct> = {
  'build-pallet': async (hand, { pallet, ranges, builtAt, hasLabel }, { by }) => {
    const form = {
      ranges: ranges.map(({ run, fromCount, toCount }) => ({ run: hand.idOf('run', run), fromCount, toCount })),
      builtAt,
      label: hasLabel,
    };
    const { id } = await hand.give(BuildPallet).execute(hand.asked(by), form);
    hand.remember('pallet', pallet, id);
  },
  'scan-back': async (hand, { pallet }, { by }) => {
    const id = hand.idOf('pallet', pallet);
    await hand.give(CheckPalletLabel).execute(hand.asked(by), id, { label: id });
  },
  'move-pallet': async (hand, { pallet, place }, { by }) => {
    const placeId = idIn(hand.plant.places, place);
    await hand.give(MovePallet).execute(hand.asked(by), hand.idOf('pallet', pallet), { placeId });
  },
  'split-pallet': async (hand, { pallet, parts, packCounts }, { by }) => {
    const form = {
      parts: packCounts.map((packCount) => ({ shares: [{ packCount }] })),
      reason: 'The customer takes small pallets',
    };
    const answer = await hand.give(SplitPallet).execute(hand.asked(by), hand.idOf('pallet', pallet), form);
    parts.forEach((part, place) => {
      hand.remember('split-pallet', part, answer.pallets[place]?.id ?? '');
    });
  },
};
