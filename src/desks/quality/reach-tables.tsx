import type { VNode } from 'preact';
import { printedSscc } from '../../platform/printing/printed-figures.js';
import { say } from '../../platform/sentences/sentences.js';
import { countText, kilogramsText, roundKilogramsText } from '../../platform/web/figures-text.js';
import { Table } from '../../platform/web/kit/table.js';
import { threadLink } from '../../tracing/thread-text.js';
import type { HoldReach, ReachedBag } from '../../tracing/hold-reach.js';
import type { PalletLine } from '../../tracing/thread.js';
import type { HoldPreview } from './hold-new.js';
import { palletLinesByStatus, type PlacedPallets } from './placed-pallets.js';

/** How far a hold reaches, in one sentence and place by place: what has left stands first. */
export function ReachTables({ preview }: { readonly preview: HoldPreview }): VNode {
  const { reach, places } = preview;
  const countAt = (status: string): number => places.find((place) => place.status === status)?.pallets.length ?? 0;
  const facts = {
    subject: preview.subject,
    pallets: reach.possible.length,
    packs: countText(reach.packCount),
    likely: reach.sureAndLikely.length,
    away: countAt('dispatched'),
    vehicle: countAt('loaded'),
    store: countAt('in-store'),
  };
  return (
    <section class="card" aria-labelledby="reach">
      <h2 id="reach">{say('reach-head')}</h2>
      <p class="sentence">{say(reach.possible.length === 0 ? 'reach-none' : 'reach-says', facts)}</p>
      <BagTable bags={reach.bags.filter(({ isOut }) => !isOut)} />
      {places.map((place) => (
        <PlaceTable key={place.status} place={place} againIds={reach.againIds} />
      ))}
      <TakenOut reach={reach} />
    </section>
  );
}

/** What quality took out of the hold: it may go on, and stays in sight. */
function TakenOut({ reach }: { readonly reach: HoldReach }): VNode | null {
  const bags = reach.bags.filter(({ isOut }) => isOut);
  if (reach.takenOut.length === 0 && bags.length === 0) return null;
  return (
    <>
      <h3>{say('reach-out-head')}</h3>
      <BagTable bags={bags} />
      {palletLinesByStatus(reach.takenOut).map((place) => (
        <PlaceTable key={place.status} place={place} mark="out" />
      ))}
    </>
  );
}

/** Bags that are held as they are; nothing where there are none. */
export function BagTable({ bags }: { readonly bags: readonly ReachedBag[] }): VNode | null {
  if (bags.length === 0) return null;
  return (
    <Table
      caption={say('reach-bags', { count: bags.length })}
      columns={[
        { head: say('reach-bag'), align: 'code' },
        { head: say('bags-column-where') },
        { head: say('bag-net'), align: 'number' },
      ]}
      rows={bags.map(({ bag }) => ({
        key: bag.id,
        isLoud: bag.status === 'dispatched' || bag.status === 'loaded',
        cells: [
          <a key="bag" href={threadLink(bag.number)}>
            {bag.number}
          </a>,
          say(`bag-status-${bag.status}`),
          bag.netGrams === null ? '–' : kilogramsText(bag.netGrams),
        ],
      }))}
    />
  );
}

interface PlaceTableProps {
  readonly place: PlacedPallets;
  /** `reach`: held there; `at`: just there; `out`: taken out of the hold. */
  readonly mark?: 'reach' | 'at' | 'out';
  /** Taken out once, and held again. */
  readonly againIds?: readonly string[];
}

export function PlaceTable({ place, mark = 'reach', againIds = [] }: PlaceTableProps): VNode {
  const isGone = mark === 'reach' && (place.status === 'dispatched' || place.status === 'loaded');
  const codes = { reach: `reach-at-${place.status}`, at: `at-${place.status}`, out: `out-${place.status}` };
  const code = codes[mark];
  const facts = { count: place.pallets.length, packs: countText(place.packCount) };
  const table = (
    <Table
      caption={say(code, facts)}
      columns={[
        { head: say('thread-pallet'), align: 'code' },
        { head: say('desk-lot'), align: 'code' },
        { head: say('thread-packs'), align: 'number' },
        { head: say('reach-likely'), align: 'number' },
        { head: say('reach-word') },
        { head: say('thread-where') },
        { head: say('thread-customer') },
      ]}
      rows={place.pallets.map((pallet) => palletRow(pallet, isGone, againIds.includes(pallet.palletId)))}
    />
  );
  if (isGone || place.pallets.length <= 15) return table;
  return (
    <details>
      <summary>{say(code, facts)}</summary>
      {table}
    </details>
  );
}

function palletRow(pallet: PalletLine, isGone: boolean, isAgain: boolean) {
  return {
    key: pallet.palletId,
    isLoud: isGone || isAgain,
    cells: [
      <a key="pallet" href={threadLink(pallet.sscc)}>
        {printedSscc(pallet.sscc)}
      </a>,
      pallet.lotCodes.join(', '),
      countText(pallet.packCount),
      roundKilogramsText(pallet.likelyGrams),
      isAgain ? `${say(`link-${pallet.word}`)}; ${say('reach-again')}` : say(`link-${pallet.word}`),
      pallet.deliveryNumber ?? pallet.placeCode ?? '–',
      pallet.customerName ?? '',
    ],
  };
}
