import type { VNode } from 'preact';
import { roundKilograms } from '../../platform/printing/printed-figures.js';
import { say } from '../../platform/sentences/sentences.js';
import { countText } from '../../platform/web/figures-text.js';
import { Table } from '../../platform/web/kit/table.js';
import type { PacksAtPlace, SuspectPlace } from '../../tracing/suspect-places.js';
import type { Suspects } from '../../tracing/suspects-of-check.js';

/** Where people look first; the others stand in the table only where something is there. */
const always: readonly SuspectPlace[] = ['in-store', 'on-dock', 'on-vehicle', 'away', 'loose'];
const order: readonly SuspectPlace[] = [
  ...(['in-store', 'on-dock', 'on-vehicle', 'away', 'came-back', 'destroyed', 'split', 'loose'] as const),
];

type Placed = Pick<Suspects, 'places' | 'placesNotHeld' | 'holds' | 'hasAssumed'>;

/** Suspect packs by where they are, in packs and kilograms that add up; beside them what nobody holds yet, once some is held. */
export function PlaceTable({ suspects }: { readonly suspects: Placed }): VNode {
  const { places, placesNotHeld, holds, hasAssumed } = suspects;
  const hasHeld = holds.length > 0;
  const shown = order.filter((place) => always.includes(place) || places.some((one) => one.place === place));
  const all = columnsOf(shown, places);
  const left = columnsOf(shown, placesNotHeld);
  const cellsAt = (at: number): string[] => [
    ...[all.packs[at], all.kilograms[at]].map((cell) => cell ?? ''),
    ...(hasHeld ? [left.packs[at], left.kilograms[at]].map((cell) => cell ?? '') : []),
  ];
  return (
    <>
      <Table
        caption={say('suspects-by-place')}
        columns={[
          { head: say('suspect-where') },
          { head: say('suspects-packs'), align: 'number' },
          { head: say('suspects-kilograms'), align: 'number' },
          ...(hasHeld
            ? ([
                { head: say('suspects-not-held-packs'), align: 'number' },
                { head: say('suspects-not-held-kilograms'), align: 'number' },
              ] as const)
            : []),
        ]}
        rows={shown.map((place, at) => ({
          key: place,
          isLoud: place === 'away' && places.some((one) => one.place === place),
          cells: [say(`suspect-place-${place}`), ...cellsAt(at)],
        }))}
        foot={[say('suspects-all-places'), ...cellsAt(shown.length)]}
      />
      {hasAssumed ? <p class="quiet">{say('suspects-assumed')}</p> : null}
    </>
  );
}

/** The figures of a column, its sum last. */
function columnsOf(shown: readonly SuspectPlace[], places: readonly PacksAtPlace[]) {
  const at = shown.map((place) => places.find((one) => one.place === place) ?? { packCount: 0, milligrams: 0 });
  const total = totalOf(places);
  return {
    packs: [...at.map(({ packCount }) => countText(packCount)), countText(total.packCount)],
    kilograms: [...tenths(at.map(({ milligrams }) => milligrams)), kilogramsOf(total.milligrams)],
  };
}

/** All of some places. */
export function totalOf(places: readonly PacksAtPlace[]): Pick<PacksAtPlace, 'packCount' | 'milligrams'> {
  return {
    packCount: places.reduce((sum, { packCount }) => sum + packCount, 0),
    milligrams: places.reduce((sum, { milligrams }) => sum + milligrams, 0),
  };
}

/** Kilograms to a tenth. */
export function kilogramsOf(milligrams: number): string {
  return roundKilograms(Math.round(milligrams / 1000));
}

/** Kilograms to a tenth, rounded so that what is shown adds up to the sum as it is shown. */
function tenths(milligrams: readonly number[]): string[] {
  let [sum, shown] = [0, 0];
  return milligrams.map((own) => {
    sum += own;
    const upTo = Math.round(Math.round(sum / 1000) / 100);
    const text = roundKilograms((upTo - shown) * 100);
    shown = upTo;
    return text;
  });
}
