import type { VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import { countText, roundKilogramsText } from '../../platform/web/figures-text.js';
import { Table } from '../../platform/web/kit/table.js';
import { threadLink } from '../../tracing/thread-text.js';
import type { PalletLine } from '../../tracing/thread.js';
import type { HoldPreview } from './hold-new.js';
import type { PlacedPallets } from './placed-pallets.js';

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
      {places.map((place) => (
        <PlaceTable key={place.status} place={place} />
      ))}
    </section>
  );
}

function PlaceTable({ place }: { readonly place: PlacedPallets }): VNode {
  const isGone = place.status === 'dispatched' || place.status === 'loaded';
  const facts = { count: place.pallets.length, packs: countText(place.packCount) };
  const table = (
    <Table
      caption={say(`reach-at-${place.status}`, facts)}
      columns={[
        { head: say('thread-pallet'), align: 'code' },
        { head: say('desk-lot'), align: 'code' },
        { head: say('thread-packs'), align: 'number' },
        { head: say('reach-likely'), align: 'number' },
        { head: say('reach-word') },
        { head: say('thread-where') },
        { head: say('thread-customer') },
      ]}
      rows={place.pallets.map((pallet) => palletRow(pallet, isGone))}
    />
  );
  if (isGone || place.pallets.length <= 15) return table;
  return (
    <details>
      <summary>{say(`reach-at-${place.status}`, facts)}</summary>
      {table}
    </details>
  );
}

function palletRow(pallet: PalletLine, isLoud: boolean) {
  return {
    key: pallet.palletId,
    isLoud,
    cells: [
      <a key="pallet" href={threadLink(pallet.sscc)}>
        {pallet.sscc}
      </a>,
      pallet.lotCodes.join(', '),
      countText(pallet.packCount),
      roundKilogramsText(pallet.likelyGrams),
      say(`link-${pallet.word}`),
      pallet.deliveryNumber ?? pallet.placeCode ?? '–',
      pallet.customerName ?? '',
    ],
  };
}
