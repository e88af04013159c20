import { bagsOf } from '../../drying/bulk-bags.js';
import { sourcesOfRanges } from '../../hopper/hopper-links.js';
import { rangesOfLot } from '../../packing/packing-runs.js';
import { readLotOfSite } from '../../packing/run-lists.js';
import { isId } from '../../platform/is-id.js';
import type { Instant } from '../../platform/clock.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { NotFound } from '../../platform/refusal.js';
import { say } from '../../platform/sentences/sentences.js';
import { groupText } from './hold-text.js';
import { bagGroupsOf, waitingBagsOf, waitingOf, type WaitingBag } from './waiting-bags.js';

/** Bags to be decided on together, and the address that leads to them. */
interface ChosenBags {
  readonly title: string;
  readonly bags: readonly WaitingBag[];
  readonly address: string;
}

/** All waiting bags, those of one group of the desk, or those that a lot may hold sugar of. */
export async function readBagGroup(
  from: ReadFrom,
  siteId: string,
  query: { readonly group?: string | null; readonly lot?: string | null },
  now: Instant,
): Promise<ChosenBags> {
  const { group: key = null, lot = null } = query;
  if (lot !== null) return bagsOfLot(from, siteId, lot);
  const waiting = await waitingBagsOf(from, siteId, now);
  if (key === null) return { title: say('group-all'), bags: waiting, address: '' };
  const group = (await bagGroupsOf(from, siteId, waiting)).find((one) => one.key === key);
  const title = group === undefined ? say('group-all') : `${groupText(group)}, ${group.grade.name}`;
  return { title, bags: group?.bags ?? [], address: `group=${encodeURIComponent(key)}` };
}

async function bagsOfLot(from: ReadFrom, siteId: string, lotId: string): Promise<ChosenBags> {
  if (!isId(lotId)) throw new NotFound('lot', lotId);
  const lot = await readLotOfSite(from, siteId, lotId.toLowerCase());
  const ranges = await rangesOfLot(from, lot.id);
  const closed = ranges.flatMap((range) => (range.toCount === null ? [] : [{ ...range, toCount: range.toCount }]));
  const links = await sourcesOfRanges(from, closed);
  const bags = await bagsOf(
    from,
    links.map(({ bagId }) => bagId),
  );
  const title = say('group-of-lot', { lot: lot.code });
  return { title, bags: await waitingOf(from, bags), address: `lot=${lot.id}` };
}
