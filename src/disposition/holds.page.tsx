import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
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
      {holds.length === 0 ? <p>{say('nothing-here')}</p> : null}
      <div class="table-wrap" tabIndex={0} role="region" aria-label={say('holds-title')}>
        <table>
          <caption>{say('holds-caption')}</caption>
          <thead>
            <tr>
              <th scope="col">{say('holds-column-hold')}</th>
              <th scope="col">{say('holds-column-state')}</th>
              <th scope="col">{say('holds-column-class')}</th>
              <th scope="col">{say('holds-column-scope')}</th>
              <th scope="col">{say('holds-column-placed')}</th>
              <th scope="col">{say('holds-column-reason')}</th>
            </tr>
          </thead>
          <tbody>
            {holds.map((hold) => (
              <tr key={hold.id}>
                <th scope="row">
                  <a href={`/holds/${hold.id}`}>{hold.number}</a>
                </th>
                <td>{hold.liftedAt === null ? <StateMark state="on-hold" /> : say('hold-lifted')}</td>
                <td>{classText(hold)}</td>
                <td>{scopeText(hold)}</td>
                <td>{localText(hold.placedAt, viewer.timeZone)}</td>
                <td>{hold.reason}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <OlderEntries path="/holds" older={next} />
    </Shell>
  );
}

/** The class of a hold in words; that nobody has set it yet is said too. */
export function classText(hold: HoldLine): string {
  return hold.hazardSet === null ? say('hazard-not-set') : say(`hazard-${hold.hazardSet}`);
}

/** What a hold covers, in words. */
export function scopeText(hold: HoldLine): string {
  const kind = say(`scope-${hold.scopeKind}`);
  if (hold.fromCount === null || hold.toCount === null) return kind;
  return say('scope-range', { kind, from: hold.fromCount, to: hold.toCount });
}
