import type { VNode } from 'preact';
import { isFit } from '../../dispatch/unit-standing.js';
import { say } from '../../platform/sentences/sentences.js';
import { countText } from '../../platform/web/figures-text.js';
import { Table } from '../../platform/web/kit/table.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import { StateMark } from '../../platform/web/state-mark.js';
import { BackTo } from './back-to.js';
import { stockShown, type StockFormat, type StockPallet } from './stock.js';
import { lastDigits, lotTail } from './unit-text.js';

interface StockPageProps {
  readonly viewer: Viewer;
  readonly formats: readonly StockFormat[];
  readonly format: StockFormat | null;
  readonly pallets: readonly StockPallet[];
}

/** Where is it, may I take it: the pallets of a format by lot and age, and the store lane by lane. */
export function stockPage({ viewer, formats, format, pallets }: StockPageProps): VNode {
  return (
    <Shell title={say('stock-title')} viewer={viewer}>
      <BackTo href="/dispatch" />
      <nav class="acts" aria-label={say('stock-formats')}>
        {formats.map(({ id, name, palletCount }) => (
          <a
            key={id}
            class="act plain"
            href={`/dispatch/stock?format=${id}`}
            aria-current={id === format?.id ? 'page' : undefined}
          >
            {name} · {countText(palletCount)}
          </a>
        ))}
      </nav>
      {format === null ? (
        <p>{say('stock-none')}</p>
      ) : (
        <>
          <p class="sentence">{sentence(format, pallets)}</p>
          <Lots pallets={pallets} />
          <Lanes pallets={pallets} />
        </>
      )}
      <p class="caution">{say('caution-pallets')}</p>
    </Shell>
  );
}

function sentence(format: StockFormat, pallets: readonly StockPallet[]): string {
  const free = pallets.filter(isFit).length;
  const facts = { format: format.name, count: pallets.length, free, stopped: pallets.length - free };
  return [say('stock-says', facts), format.palletCount > stockShown ? say('stock-more', { shown: stockShown }) : '']
    .join(' ')
    .trim();
}

/** Only what may go, the oldest lot first: what to take next, and from where. */
function Lots({ pallets }: { readonly pallets: readonly StockPallet[] }): VNode {
  const free = pallets.filter(isFit);
  const lots = [...new Set(free.map(({ lots: own }) => own.join(', ')))];
  return (
    <Table
      caption={say('stock-free')}
      empty={say('stock-nothing-free')}
      columns={[
        { head: say('delivery-lots'), align: 'code' },
        { head: say('stock-pallets'), align: 'number' },
        { head: say('delivery-packs'), align: 'number' },
        { head: say('stock-age'), align: 'number' },
        { head: say('stock-where') },
      ]}
      rows={lots.map((lot) => {
        const own = free.filter((pallet) => pallet.lots.join(', ') === lot);
        return {
          key: lot,
          cells: [
            lot,
            countText(own.length),
            countText(own.reduce((sum, { packCount }) => sum + packCount, 0)),
            countText(Math.max(...own.map(({ ageDays }) => ageDays))),
            placesOf(own),
          ],
        };
      })}
    />
  );
}

function placesOf(pallets: readonly StockPallet[]): string {
  const places = [...new Set(pallets.map(({ place }) => place))].sort();
  return places
    .map((place) => `${place ?? say('stock-no-place')} (${pallets.filter((one) => one.place === place).length})`)
    .join(', ');
}

/** The store lane by lane; in each cell the state as a shape, the last digits, the lot and the days. */
function Lanes({ pallets }: { readonly pallets: readonly StockPallet[] }): VNode {
  const lanes = [...new Set(pallets.map(({ place }) => place))].sort();
  return (
    <section aria-labelledby="lanes">
      <h2 id="lanes">{say('stock-map')}</h2>
      {lanes.map((lane) => {
        const own = pallets.filter(({ place }) => place === lane);
        const isHeld = own.some(({ state }) => state === 'on-hold' || state === 'rejected');
        return (
          <section key={lane ?? ''} class={isHeld ? 'lane held' : 'lane'} aria-label={lane ?? say('stock-no-place')}>
            <h3>
              {lane ?? say('stock-no-place')} <small>{countText(own.length)}</small>
            </h3>
            <ul class="cells">
              {own.map((pallet) => (
                <li key={pallet.id}>
                  <a href={`/pallets/${pallet.id}`}>
                    <StateMark state={pallet.state} />
                    <strong>{lastDigits(pallet.sscc)}</strong>
                    <span>{lotTail(pallet.lots)}</span>
                    <span>{say('stock-days', { days: pallet.ageDays })}</span>
                    {pallet.isFull ? null : <span>{say('pallets-part')}</span>}
                  </a>
                </li>
              ))}
            </ul>
          </section>
        );
      })}
    </section>
  );
}
