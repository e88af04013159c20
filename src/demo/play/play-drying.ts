import { CloseBag } from '../../drying/close-bag.js';
import { CorrectWeighing } from '../../drying/correct-weighing.js';
import { EndDryerRun } from '../../drying/end-dryer-run.js';
import { RecordOpeningStock } from '../../drying/record-opening-stock.js';
import { StartBag } from '../../drying/start-bag.js';
import { StartDryerRun } from '../../drying/start-dryer-run.js';
import type { DryingAct } from '../life/act.js';
import { idIn, type DemoHand } from '../set-up/demo-hand.js';
import type { Players } from './players.js';

/** From the maker's label of the demo's bags. */
const safeLoadGrams = 1_250_000;

export const dryingPlayers: Players<DryingAct> = {
  'stock-bags': async (hand, { grade, bags }, { by }) => {
    const answer = await hand.give(RecordOpeningStock).execute(hand.asked(by), {
      gradeId: idIn(hand.plant.grades, grade),
      scaleId: idIn(hand.plant.scales, 'S1'),
      bags: bags.map(({ grossGrams, tareGrams }) => {
        return { grossGrams, tareGrams, isPresetTare: false, safeLoadGrams, placeId: idIn(hand.plant.places, 'BAGS') };
      }),
    });
    bags.forEach(({ bag }, place) => {
      hand.remember('bag', bag, answer.bags[place]?.id ?? '');
    });
  },
  'start-dryer-run': async (hand, { run, dryer, grade }, { by }) => {
    const form = { dryerId: idIn(hand.plant.dryers, dryer), gradeId: idIn(hand.plant.grades, grade) };
    const { id } = await hand.give(StartDryerRun).execute(hand.asked(by), form);
    hand.remember('dryer-run', run, id);
  },
  'end-dryer-run': async (hand, { run }, { by }) => {
    await hand.give(EndDryerRun).execute(hand.asked(by), { run: hand.idOf('dryer-run', run) });
  },
  'start-bag': async (hand, { bag, run }, { by }) => {
    const linerLot = linerLotOf(bag);
    const form = { run: hand.idOf('dryer-run', run), safeLoadGrams, linerLot };
    const { id } = await hand.give(StartBag).execute(hand.asked(by), form);
    hand.remember('bag', bag, id);
  },
  'close-bag': async (hand, { bag, scale, filledAt, grossGrams, tareGrams }, { by }) => {
    await hand.give(CloseBag).execute(hand.asked(by), {
      bag: hand.idOf('bag', bag),
      ...{ grossGrams, tareGrams, isPresetTare: false, scaleId: idIn(hand.plant.scales, scale), filledAt },
      placeId: idIn(hand.plant.places, 'BAGS'),
    });
  },
  'correct-weighing': async (hand, { bag, reason, tareGrams }, { by }) => {
    const weighingId = await lastWeighingOf(hand, hand.idOf('bag', bag));
    const form = { why: 'incorrect-data', reason, tareGrams } as const;
    await hand.give(CorrectWeighing).execute(hand.asked(by), weighingId, form);
  },
};

/** A pallet of empty bags holds forty, all of one lot. */
function linerLotOf(bag: string): string {
  return `LN-${String(1 + Math.floor(Number(bag.split('-').at(-1)) / 40)).padStart(4, '0')}`;
}

async function lastWeighingOf(hand: DemoHand, bagId: string): Promise<string> {
  const [row] = await hand.reader.sql<{ id: string }>`
    SELECT "id" FROM "bag_weighing" WHERE "bag_id" = ${bagId} AND "voided_by" IS NULL
    ORDER BY "weighed_at" DESC, "id" DESC LIMIT 1`;
  if (row === undefined) throw new RangeError(`Bag ${bagId} was not weighed`);
  return row.id;
}
