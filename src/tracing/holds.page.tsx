import type { VNode } from 'preact';
import type { HoldLine } from '../disposition/holds.js';
import { HeldThing } from '../pallets/held-thing.js';
import { printedSscc } from '../platform/printing/printed-figures.js';
import { say } from '../platform/sentences/sentences.js';
import { Table } from '../platform/web/kit/table.js';
import { OlderEntries } from '../platform/web/older-entries.js';
import { localText } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import { StateMark } from '../platform/web/state-mark.js';

/** A hold with the name of what it is on. */
interface NamedHold {
  readonly hold: HoldLine;
  readonly name: string | null;
}

interface HoldsProps {
  readonly viewer: Viewer;
  readonly holds: readonly NamedHold[];
  readonly next: string | null;
}

/** All holds, latest first. */
export function holdsPage({ viewer, holds, next }: HoldsProps): VNode {
  return (
    <Shell title={say('holds-title')} viewer={viewer}>
      <Table
        caption={say('holds-caption')}
        columns={[
          { head: say('holds-column-hold'), align: 'code' },
          { head: say('holds-column-state') },
          { head: say('holds-column-class') },
          { head: say('holds-column-scope') },
          { head: say('holds-column-placed') },
          { head: say('holds-column-reason') },
        ]}
        rows={holds.map(({ hold, name }) => ({
          key: hold.id,
          cells: [
            <a href={`/holds/${hold.id}`}>{hold.number}</a>,
            hold.liftedAt === null ? <StateMark state="on-hold" /> : say('hold-lifted'),
            classText(hold),
            <Held viewer={viewer} hold={hold} name={name} />,
            localText(hold.placedAt, viewer.timeZone),
            hold.reason,
          ],
        }))}
      />
      <OlderEntries path="/holds" older={next} />
    </Shell>
  );
}

/** The class of a hold in words; that nobody has set it yet is said too. */
export function classText(hold: HoldLine): string {
  return hold.hazardSet === null ? say('hazard-not-set') : say(`hazard-${hold.hazardSet}`);
}

/** What a hold is on and which part of it, with the way there. */
export function Held({ viewer, hold, name }: NamedHold & { readonly viewer: Viewer }): VNode {
  const { scopeKind: kind, scopeId: id } = hold;
  return <HeldThing kind={kind} id={id} name={name} says={scopeText({ hold, name }, viewer.timeZone)} />;
}

function scopeText({ hold, name }: NamedHold, timeZone: string): string {
  const printed = name !== null && hold.scopeKind === 'pallet' ? printedSscc(name) : name;
  return heldPartText(
    hold,
    [say(`scope-${hold.scopeKind}`), printed].filter((part) => part !== null).join(' '),
    timeZone,
  );
}

/** Which part of a thing is held: its minutes or packs; the thing alone where it is held whole. */
export function heldPartText(hold: HoldLine, kind: string, timeZone: string): string {
  if (hold.fromAt !== null && hold.untilAt !== null) {
    return say('scope-times', {
      kind,
      from: localText(hold.fromAt, timeZone),
      until: localText(hold.untilAt, timeZone),
    });
  }
  if (hold.fromCount === null || hold.toCount === null) return kind;
  return say('scope-range', { kind, from: hold.fromCount, to: hold.toCount });
}
