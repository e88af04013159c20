import { meanShareLeft } from '../../core/hopper-flow/residence-time.js';
import { ChooseFlowModel } from '../../hopper/choose-flow-model.js';
import { RecordTrial } from '../../hopper/record-trial.js';
import { resultsOfBags } from '../../laboratory/bag-results.js';
import { shifted } from '../../platform/clock.js';
import type { DemoHand } from '../set-up/demo-hand.js';

/** Invented: what the samples are drawn from, and by how much the laboratory was off in each, in tenths of IU. */
const flow = { zoneCount: 3, holdUpGrams: 430_000, plugGrams: 0 };
const samples = [
  ...[
    [40, 2],
    [90, -3],
    [140, 1],
    [190, 4],
    [240, -2],
    [290, 3],
    [340, -4],
    [390, 1],
  ],
  ...[
    [450, -1],
    [520, 5],
    [600, -3],
    [700, 2],
    [820, 0],
    [960, -2],
  ],
] as const;
const standardIu = 0.3;
const dayMilliseconds = 86_400_000;

interface TwoBags {
  readonly before: string;
  readonly beforeIu: number;
  readonly after: string;
  readonly afterIu: number;
  readonly at: string;
}

/**
 * A tracer trial on the first hopper, entered by quality when its results were there: two bags that were tipped one
 * after the other and differ in colour. The hopper is taken to flow as it says, since before the demo began.
 */
export async function makeTracerTrial(hand: DemoHand, startsAt: string): Promise<void> {
  const [hopperId] = hand.plant.hoppers.values();
  const bags = hopperId === undefined ? null : await mostUnlike(hand, hopperId);
  if (hopperId === undefined || bags === null) return;
  const { before, beforeIu, after, afterIu, at } = bags;
  const trial = await hand.give(RecordTrial).execute(hand.asked('quality'), hopperId, {
    ...{ beforeBag: before, afterBag: after, standardIu: String(standardIu), madeAt: at, insideGrams: 560_000 },
    ...{ beforeColourIu: String(beforeIu), afterColourIu: String(afterIu) },
    samples: samples.map(([kilograms, off]) => {
      const atGrams = kilograms * 1000;
      const share = meanShareLeft(flow, { fromGrams: atGrams, toGrams: atGrams });
      return { atGrams, colourIu: (beforeIu + (afterIu - beforeIu) * share + off / 10).toFixed(1) };
    }),
    note: 'Both lines at full speed; the second bag was followed by three of the same hour (invented)',
  });
  await hand.give(ChooseFlowModel).execute(hand.asked('quality'), hopperId, {
    kind: 'stirred-zones',
    trialId: trial.id,
    validFrom: shifted(startsAt, -2 * dayMilliseconds),
    reason: 'The hopper has been the same since it was set up',
  });
}

/** Of two bags tipped one after the other within a period, those whose colours differ most; null: none by enough. */
async function mostUnlike(hand: DemoHand, hopperId: string): Promise<TwoBags | null> {
  const tips = await hand.reader.sql<{ bagId: string; periodId: string; openedAt: string }>`
    SELECT t."bag_id" AS "bagId", t."period_id" AS "periodId", t."opened_at" AS "openedAt"
    FROM "tip" t JOIN "hopper_period" p ON p."id" = t."period_id"
    WHERE p."hopper_id" = ${hopperId} AND t."bag_id" IS NOT NULL AND t."voided_by" IS NULL ORDER BY t."opened_at"`;
  const results = await resultsOfBags(
    hand.reader,
    tips.map(({ bagId }) => bagId),
  );
  const colourOf = (bagId: string): number | null => {
    const colour = results.get(bagId)?.find(({ property }) => property === 'colour-iu');
    return colour === undefined ? null : Number(colour.amount);
  };
  const pairs = tips.flatMap((tip, place): TwoBags[] => {
    const last = tips[place - 1];
    const [beforeIu, afterIu] = [last === undefined ? null : colourOf(last.bagId), colourOf(tip.bagId)];
    if (last?.periodId !== tip.periodId || beforeIu === null || afterIu === null) return [];
    return [{ before: last.bagId, beforeIu, after: tip.bagId, afterIu, at: tip.openedAt }];
  });
  const contrast = ({ beforeIu, afterIu }: TwoBags): number => Math.abs(afterIu - beforeIu);
  const [best] = pairs.sort((one, other) => contrast(other) - contrast(one));
  return best !== undefined && contrast(best) > 20 * standardIu ? best : null;
}
