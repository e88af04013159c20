import { AssignGrade } from '../../disposition/assign-grade.js';
import { Decide } from '../../disposition/decide.js';
import { LiftHold } from '../../disposition/lift-hold.js';
import { SetHoldClass } from '../../disposition/set-hold-class.js';
import { lotRanges } from '../../packing/packing-runs.js';
import { PlaceHold } from '../../tracing/place-hold.js';
import type { QualityAct } from '../life/act.js';
import { idIn } from '../set-up/demo-hand.js';
import type { Players } from './players.js';

export const qualityPlayers: Players<QualityAct> = {
  'release-bags': async (hand, { bags }, { by }) => {
    for (const bag of bags) {
      const form = { kind: 'bulk-bag', subject: hand.idOf('bag', bag), verdict: 'released' } as const;
      await hand.give(Decide).execute(hand.asked(by), form);
    }
  },
  'reject-bag': async (hand, { bag, reason }, { by }) => {
    const form = { kind: 'bulk-bag', subject: hand.idOf('bag', bag), verdict: 'rejected', reason } as const;
    await hand.give(Decide).execute(hand.asked(by), form);
  },
  'concede-bag': async (hand, { bag, reason }, { by }) => {
    const form = { kind: 'bulk-bag', subject: hand.idOf('bag', bag), verdict: 'concession', reason } as const;
    const secondPersonId = hand.personId('manager');
    await hand.give(Decide).execute(hand.asked(by), { ...form, secondPersonId });
  },
  'downgrade-bag': async (hand, { bag, grade, reason }, { by }) => {
    const form = { bag: hand.idOf('bag', bag), gradeId: idIn(hand.plant.grades, grade), reason };
    await hand.give(AssignGrade).execute(hand.asked(by), form);
  },
  'hold-bag': async (hand, { hold, bag, reason }, { by }) => {
    const form = { kind: 'bulk-bag', id: hand.idOf('bag', bag), reason } as const;
    const { id } = await hand.give(PlaceHold).execute(hand.asked(by), form);
    hand.remember('hold', hold, id);
  },
  'hold-lot': async (hand, { hold, run, reason }, { by }) => {
    const [lot] = await lotRanges(hand.reader, hand.idOf('run', run));
    if (lot === undefined) throw new RangeError(`Run ${run} has no lot`);
    const { id } = await hand.give(PlaceHold).execute(hand.asked(by), { kind: 'lot', id: lot.lotId, reason });
    hand.remember('hold', hold, id);
  },
  'class-hold': async (hand, { hold, hazard, reason }, { by }) => {
    await hand.give(SetHoldClass).execute(hand.asked(by), { hold: hand.idOf('hold', hold), hazard, reason });
  },
  'lift-hold': async (hand, { hold, reason }, { by }) => {
    await hand.give(LiftHold).execute(hand.asked(by), { hold: hand.idOf('hold', hold), reason });
  },
};
