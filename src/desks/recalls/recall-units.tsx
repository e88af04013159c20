import type { VNode } from 'preact';
import { packsIn } from '../../packing/run-ranges.js';
import { groupBy } from '../../platform/group-by.js';
import { say } from '../../platform/sentences/sentences.js';
import { countText } from '../../platform/web/figures-text.js';
import { Table } from '../../platform/web/kit/table.js';
import type { FiguresOfText } from '../../recalls/frozen-figures.js';
import { threadLink } from '../../tracing/thread-text.js';

type ShownUnit = FiguresOfText['units'][number];

/** What is gone first, since its customers must be told; then what can still be blocked. */
const order = ['dispatched', 'on-vehicle', 'on-dock', 'in-store'] as const;

/** More than these are folded away. */
const mostOpen = 15;

/** Every pallet and bag that the recall covers, by where it is. */
export function RecallUnits({ units }: Pick<FiguresOfText, 'units'>): VNode {
  const places = groupBy(units, ({ place }) => place);
  return (
    <section class="card" aria-labelledby="units">
      <h2 id="units">{say('recall-report-where')}</h2>
      {units.length === 0 ? <p class="quiet">{say('recall-no-units')}</p> : null}
      {order.map((place) => {
        const own = places.get(place) ?? [];
        return own.length === 0 ? null : <Place key={place} place={place} units={own} />;
      })}
    </section>
  );
}

function Place({ place, units }: { readonly place: ShownUnit['place']; readonly units: readonly ShownUnit[] }): VNode {
  const packs = units.reduce((sum, { ranges }) => sum + packsIn(ranges), 0);
  const caption = say(`recall-at-${place}`, { count: units.length, packs: countText(packs) });
  const table = (
    <Table
      caption={caption}
      columns={[
        { head: say('recall-unit'), align: 'code' },
        { head: say('recall-lots'), align: 'code' },
        { head: say('recall-packs'), align: 'number' },
        { head: say('thread-where') },
        { head: say('recall-how-sure') },
      ]}
      rows={units.map((unit) => ({
        key: unit.id,
        cells: [
          <a key="unit" href={threadLink(unit.name)}>
            {unit.name}
          </a>,
          unit.lotCodes.join(', '),
          unit.kind === 'bulk-bag'
            ? '–'
            : say('recall-packs-of', { count: countText(packsIn(unit.ranges)), all: countText(unit.packCount) }),
          [unit.placeCode ?? unit.delivery ?? '', unit.customerCode ?? ''].filter((text) => text !== '').join(' · '),
          say(unit.isCertain ? 'link-sure' : 'link-possible'),
        ],
      }))}
    />
  );
  if (units.length <= mostOpen) return table;
  return (
    <details>
      <summary>{caption}</summary>
      {table}
    </details>
  );
}
