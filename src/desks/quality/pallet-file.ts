import { decisionsOf, type DecisionLine } from '../../disposition/decisions.js';
import { changesAbout } from '../../disposition/changes-to-look-at.js';
import { lastSequenceOf } from '../../journal/stale-page.js';
import { palletView, type PalletView } from '../../pallets/pallet-views.js';
import type { Actor } from '../../platform/actor.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { lacksOfChanges, type Lack } from './file-parts.js';
import { secondPeopleOf, type SecondPerson } from './second-people.js';

/** All that quality looks at before deciding on a pallet. */
export interface PalletFile {
  readonly pallet: PalletView;
  readonly lacks: readonly Lack[];
  readonly decisions: readonly DecisionLine[];
  readonly seconds: readonly SecondPerson[];
  readonly sequence: number;
}

/** @throws {NotFound} `pallet` */
export async function readPalletFile(from: ReadFrom, actor: Actor, palletId: string): Promise<PalletFile> {
  const pallet = await palletView(from, actor.siteId, palletId);
  const reasons = pallet.standing.reasons
    .filter(({ state }) => state !== 'released' && state !== null)
    .map(({ code, facts, state, by }): Lack => {
      const href = by === undefined ? null : `/quality/holds/${by.holdId}`;
      return { code, facts, href, isGrave: state !== 'concession' };
    });
  const changes = await changesAbout(from, actor.siteId, [pallet.id]);
  return {
    pallet,
    lacks: [...reasons, ...lacksOfChanges(changes)],
    decisions: await decisionsOf(from, 'pallet', pallet.id),
    seconds: await secondPeopleOf(from, actor),
    sequence: await lastSequenceOf(from, { kind: 'pallet', id: pallet.id }),
  };
}
