import type { BagRow } from '../drying/bulk-bags.js';
import { standingsOf } from '../disposition/standings.js';
import { bagsOutside } from '../pallets/bags-outside.js';
import { namesOfHeld } from '../pallets/held-things.js';
import { factsOfHold, heldBy, worstOf, type PalletStanding, type StandingReason } from '../pallets/pallet-standing.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { Refusal } from '../platform/refusal.js';
import { say } from '../platform/sentences/sentences.js';

/** How a unit stands, and why. */
export type UnitStanding = Pick<PalletStanding, 'state' | 'reasons'>;

/** Enough reasons for the dock: the rest stands on the unit's page. */
const reasonsShown = 3;

/**
 * What quality stopped is said before anything that one delivery asks: who took the wrong goods has a held unit in hand.
 *
 * @throws {Refusal} `unit-on-hold`, `unit-rejected`
 */
export function refuseStopped(unit: string, standing: UnitStanding): void {
  if (standing.state === 'on-hold' || standing.state === 'rejected') refuseUnfit(unit, standing);
}

/**
 * Only what is released, or accepted by a concession, may go.
 *
 * @throws {Refusal} `unit-waits`, `unit-on-hold`, `unit-rejected`
 */
export function refuseUnfit(unit: string, standing: UnitStanding): void {
  const { state } = standing;
  if (state === 'released' || state === 'concession') return;
  const code = { waiting: 'unit-waits', 'on-hold': 'unit-on-hold', rejected: 'unit-rejected' }[state];
  throw new Refusal(code, { unit, because: whyUnfit(standing) });
}

/** Whether quality lets it go. */
export function isFit({ state }: Pick<UnitStanding, 'state'>): boolean {
  return state === 'released' || state === 'concession';
}

/** The reasons that hold it up, as sentences. */
export function whyUnfit({ state, reasons: all }: UnitStanding): string {
  const reasons = all.filter((reason) => reason.state === state);
  const shown = reasons.slice(0, reasonsShown).map((reason) => say(reason.code, reason.facts));
  const more = reasons.length > reasonsShown ? [say('and-more-reasons', { count: reasons.length - reasonsShown })] : [];
  return [...shown, ...more].join(' ');
}

/** How whole bags stand, in the words of pallets: decision, holds, results. */
export async function standingsOfBags(
  from: ReadFrom,
  bags: readonly BagRow[],
): Promise<ReadonlyMap<string, UnitStanding & { readonly gradeId: string }>> {
  const standings = await standingsOf(from, bags);
  const outside = await bagsOutside(from, bags, standings);
  const holds = [...standings.values()].flatMap((standing) => standing.holds);
  const held = holds.map(({ scopeKind: kind, scopeId }) => ({ kind, id: scopeId }));
  const names = await namesOfHeld(from, held);
  return new Map(
    bags.map((bag) => {
      const standing = standings.get(bag.id);
      const { verdict, reason } = standing?.decision ?? { verdict: 'waiting', reason: null };
      const facts = { bag: bag.number, reason };
      const isOutside = verdict === 'released' && outside.has(bag.id);
      const reasons: readonly StandingReason[] = [
        { code: `whole-bag-${verdict}`, facts, state: verdict },
        ...(isOutside ? [{ code: 'whole-bag-result-outside', facts, state: 'waiting' } as const] : []),
        ...(standing?.holds ?? []).map((hold): StandingReason => {
          const by = heldBy(hold, names);
          return { code: 'held-by', facts: factsOfHold(hold, by), state: 'on-hold', by };
        }),
      ];
      return [bag.id, { state: worstOf(reasons), reasons, gradeId: standing?.gradeId ?? bag.intendedGradeId }];
    }),
  );
}
