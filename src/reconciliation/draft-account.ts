import { hopperOf } from '../plant/plant-facts.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { NotFound } from '../platform/refusal.js';
import type { AccountLine, AccountSpan, AccountView } from './account-view.js';
import { bagsOfAccount } from './bags-of-account.js';
import { balanceLines } from './balance-lines.js';
import { hopperSeen } from './hopper-seen.js';
import { packagingOfAccount } from './packaging-of-account.js';
import { packWeightsOf } from './pack-weights.js';
import { packsOfAccount, runStretches } from './packs-of-account.js';
import { possibleMistakes } from './possible-mistakes.js';
import { removalsOfAccount } from './removals-of-account.js';
import { scalesOfSite } from './scales-of-lines.js';

/**
 * The account of a hopper and all lines it feeds over a time, as the records stand now.
 *
 * Bags (by their opening) and packs (by their count) are taken between the two looks into the hopper that are nearest to
 * the start and the end; what was removed, as it was recorded in the time itself, since it left the hopper before it was
 * weighed. Nothing is filled from the difference; where nobody looked there is no verdict.
 *
 * @throws {NotFound} `hopper`
 */
export async function draftAccount(from: ReadFrom, siteId: string, span: AccountSpan): Promise<AccountView> {
  const hopper = await hopperOf(from, span.hopperId);
  if (hopper.siteId !== siteId) throw new NotFound('hopper', span.hopperId);
  const { opening, closing, ...seen } = await hopperSeen(from, span);
  const drawn = { siteId, hopperId: span.hopperId, fromAt: seen.drawnFromAt, untilAt: seen.drawnUntilAt };
  const scales = await scalesOfSite(from, siteId);
  const bags = await bagsOfAccount(from, drawn, scales);
  const stretches = await runStretches(from, drawn);
  const runIds = [...new Set(stretches.map(({ runId }) => runId))];
  const packs = await packsOfAccount(from, stretches, await packWeightsOf(from, runIds, scales));
  const removals = await removalsOfAccount(from, { siteId, ...span }, scales);
  const lines: readonly AccountLine[] = [
    ...(opening === null ? [] : [opening]),
    ...bags.lines.filter(({ side }) => side === 'in'),
    ...packs,
    ...removals,
    ...bags.lines.filter(({ side }) => side === 'out'),
    ...(closing === null ? [] : [closing]),
  ];
  return {
    hopperId: span.hopperId,
    hopperCode: hopper.code,
    hopperName: hopper.name,
    fromAt: span.fromAt,
    untilAt: span.untilAt,
    ...seen,
    lines,
    packaging: await packagingOfAccount(from, packs),
    hangingBags: bags.hangingBags,
    ...balanceLines(lines, await possibleMistakes(from, drawn, lines)),
  };
}
