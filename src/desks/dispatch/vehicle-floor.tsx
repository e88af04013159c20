import type { VNode } from 'preact';
import type { UnitView } from '../../dispatch/delivery-views.js';
import { say } from '../../platform/sentences/sentences.js';
import { roundKilogramsText } from '../../platform/web/figures-text.js';
import { lastDigits, lotTail } from './unit-text.js';

interface VehicleFloorProps {
  readonly units: readonly UnitView[];
  /** Ids of units that may not go. */
  readonly unfitIds: ReadonlySet<string>;
  readonly lastId: string | null;
}

/** Two rows of seventeen pallet places: what fits into a usual trailer of 13.6 m, crosswise pallets (common practice, no source). */
const rowsAcross = 2;
const columnsAlong = 17;
const cellWidth = 68;
const cellHeight = 74;
const left = 54;
const top = 26;
const width = left + columnsAlong * cellWidth + 8;
const height = top + rowsAcross * cellHeight + 34;

/** The floor of the vehicle in the order of loading, the front at the left. The table of units beneath says the same. */
export function VehicleFloor({ units, unfitIds, lastId }: VehicleFloorProps): VNode {
  const shown = units.slice(0, rowsAcross * columnsAlong);
  const more = units.length - shown.length;
  const half = Math.ceil(columnsAlong / 2);
  const isFront = (place: number): boolean => Math.floor(place / rowsAcross) < half;
  const sum = (front: boolean): number =>
    units.reduce((grams, unit, place) => grams + (isFront(place) === front ? unit.grossGrams : 0), 0);
  const says = say('floor-says', {
    count: units.length,
    front: roundKilogramsText(sum(true)),
    rear: roundKilogramsText(sum(false)),
  });
  return (
    <figure class="floor">
      <svg class="picture" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={says}>
        <text x="6" y="17">
          {say('floor-front')}
        </text>
        <path class="strong" d={`M${left - 6} ${top - 6} V${top + rowsAcross * cellHeight + 6}`} />
        {Array.from({ length: rowsAcross * columnsAlong }, (_, place) => (
          <Cell key={place} place={place} unit={shown[place]} unfitIds={unfitIds} lastId={lastId} />
        ))}
        <path class="ghost" d={`M${left + half * cellWidth - 2} ${top - 14} V${height - 22}`} />
        <text x={left} y={height - 8}>
          {say('floor-half-front', { grams: roundKilogramsText(sum(true)) })}
        </text>
        <text x={left + half * cellWidth + 6} y={height - 8}>
          {say('floor-half-rear', { grams: roundKilogramsText(sum(false)) })}
        </text>
      </svg>
      <figcaption class="quiet">
        {say('floor-rough')} {more > 0 ? say('floor-more', { count: more }) : ''}
      </figcaption>
    </figure>
  );
}

interface CellProps {
  readonly place: number;
  readonly unit: UnitView | undefined;
  readonly unfitIds: ReadonlySet<string>;
  readonly lastId: string | null;
}

function Cell({ place, unit, unfitIds, lastId }: CellProps): VNode {
  const x = left + Math.floor(place / rowsAcross) * cellWidth;
  const y = top + (place % rowsAcross) * cellHeight;
  if (unit === undefined) {
    return <rect class="ghost" x={x} y={y} width={cellWidth - 6} height={cellHeight - 6} />;
  }
  const isUnfit = unfitIds.has(unit.id);
  const kind = isUnfit ? 'failed' : unit.id === lastId ? 'open last' : 'open';
  const text = isUnfit ? 'on-dark' : undefined;
  return (
    <g class="unit">
      <rect class={kind} x={x} y={y} width={cellWidth - 6} height={cellHeight - 6} />
      <text class={text} x={x + 5} y={y + 16}>
        {unit.place}
      </text>
      <text class={`${text ?? ''} big`} x={x + 5} y={y + 39}>
        {lastDigits(unit.name)}
      </text>
      <text class={text} x={x + 5} y={y + 58}>
        {isUnfit ? say('floor-stop') : lotTail(unit.lots)}
      </text>
    </g>
  );
}
