import { CloseReworkBin } from '../../hopper/close-rework-bin.js';
import { CorrectTip } from '../../hopper/correct-tip.js';
import { EndTip } from '../../hopper/end-tip.js';
import { ProveEmpty } from '../../hopper/prove-empty.js';
import { RunDown } from '../../hopper/run-down.js';
import { SeeLevel } from '../../hopper/see-level.js';
import { SettleCandidate } from '../../hopper/settle-candidate.js';
import { StartRun } from '../../hopper/start-run.js';
import { TipBag } from '../../hopper/tip-bag.js';
import { TipOneOfSeveral } from '../../hopper/tip-one-of-several.js';
import { TipReworkBin } from '../../hopper/tip-rework-bin.js';
import type { HopperAct } from '../life/act.js';
import { idIn } from '../set-up/demo-hand.js';
import type { Players } from './players.js';

/** Who looks into a hopper with the lead, and who else saw what could not be read. */
const secondPerson = 'manager';

export const hopperPlayers: Players<HopperAct> = {
  'tip-bag': async (hand, { tip, hopper, bag, openedAt, lateReason }, { by }) => {
    const { id } = await hand.give(TipBag).execute(hand.asked(by), {
      bag: hand.idOf('bag', bag),
      hopperId: idIn(hand.plant.hoppers, hopper),
      openedAt,
      reason: lateReason,
      happened: lateReason !== null,
    });
    hand.remember('tip', tip, id);
  },
  'tip-one-of': async (hand, { tip, hopper, bags, openedAt }, { by }) => {
    const { id } = await hand.give(TipOneOfSeveral).execute(hand.asked(by), {
      candidates: bags.map((bag) => ({ bag: hand.idOf('bag', bag) })),
      hopperId: idIn(hand.plant.hoppers, hopper),
      secondPersonId: hand.personId(secondPerson),
      identifiedBy: 'photo',
      openedAt,
    });
    hand.remember('tip', tip, id);
  },
  'settle-candidate': async (hand, { tip, bag, reason }, { by }) => {
    const form = { bag: hand.idOf('bag', bag), reason };
    await hand.give(SettleCandidate).execute(hand.asked(by), hand.idOf('tip', tip), form);
  },
  'correct-tip': async (hand, { tip, bag, reason }, { by }) => {
    const form = { why: 'incorrect-data', bag: hand.idOf('bag', bag), reason } as const;
    await hand.give(CorrectTip).execute(hand.asked(by), hand.idOf('tip', tip), form);
  },
  'bag-off': async (hand, { tip, offAt, lateReason, rest }, { by }) => {
    const weighed = rest === null ? {} : { ...rest, isPresetTare: false, scaleId: idIn(hand.plant.scales, 'S1') };
    const form = { offAt, reason: lateReason, ...weighed };
    await hand.give(EndTip).execute(hand.asked(by), hand.idOf('tip', tip), form);
  },
  'tip-bin': async (hand, { hopper, bin, openedAt }, { by }) => {
    const form = { bin: hand.idOf('bin', bin), hopperId: idIn(hand.plant.hoppers, hopper), openedAt };
    await hand.give(TipReworkBin).execute(hand.asked(by), form);
  },
  'close-bin': async (hand, { bin, netGrams, parents }, { by }) => {
    const { id } = await hand.give(CloseReworkBin).execute(hand.asked(by), {
      content: 'weight-rejects',
      netGrams,
      scaleId: idIn(hand.plant.scales, 'P1'),
      parents: parents.map(({ run, fromCount, toCount }) => ({ run: hand.idOf('run', run), fromCount, toCount })),
    });
    hand.remember('bin', bin, id);
  },
  'see-level': async (hand, { hopper, lowerGrams, upperGrams, seenAt }, { by }) => {
    const form = { how: 'probe', lowerGrams, upperGrams, seenAt } as const;
    await hand.give(SeeLevel).execute(hand.asked(by), idIn(hand.plant.hoppers, hopper), form);
  },
  'run-down': async (hand, { hopper, upperGrams, seenAt }, { by }) => {
    const form = { atMostGrams: upperGrams, seenAt };
    await hand.give(RunDown).execute(hand.asked(by), idIn(hand.plant.hoppers, hopper), form);
  },
  'prove-empty': async (hand, { hopper, residueGrams, residueUpperGrams, provenAt }, { by }) => {
    await hand.give(ProveEmpty).execute(hand.asked(by), idIn(hand.plant.hoppers, hopper), {
      isFlowStopped: true,
      how: 'Hatch opened, lamp, walls brushed',
      secondPersonId: hand.personId(secondPerson),
      ...{ residueGrams, residueUpperGrams, provenAt },
    });
  },
  'start-run': async (hand, { run, line, format, startedAt }, { by }) => {
    const form = { lineId: idIn(hand.plant.lines, line), formatId: idIn(hand.plant.formats, format), startedAt };
    const answer = await hand.give(StartRun).execute(hand.asked(by), form);
    hand.remember('run', run, answer.id);
  },
};
