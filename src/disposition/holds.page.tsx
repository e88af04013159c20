import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
import { Table } from '../platform/web/kit/table.js';
import { OlderEntries } from '../platform/web/older-entries.js';
import { localText } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import { StateMark } from '../platform/web/state-mark.js';
import type { HoldLine } from './holds.js';

interface HoldsProps {
  readonly viewer: Viewer;
  readonly holds: readonly HoldLine[];
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
        rows={holds.map((hold) => ({
          key: hold.id,
          cells: [
            <a href={`/holds/${hold.id}`}>{hold.number}</a>,
            hold.liftedAt === null ? <StateMark state="on-hold" /> : say('hold-lifted'),
            classText(hold),
            scopeText(hold, viewer.timeZone),
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

/** What a hold covers, in words. */
export function scopeText(hold: HoldLine, timeZone: string): string {
  const kind = say(`scope-${hold.scopeKind}`);
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
