import type { VNode } from 'preact';
import { roles } from '../platform/actor.js';
import { say } from '../platform/sentences/sentences.js';
import { Table } from '../platform/web/kit/table.js';
import { OlderEntries } from '../platform/web/older-entries.js';
import { localText, sayLocally } from '../platform/web/local-text.js';
import type { Viewer } from '../platform/web/request.js';
import { Shell } from '../platform/web/shell.js';
import type { PointRow } from './open-points.js';
import { pageOfSubject } from './point-subject.js';

interface OpenPointProps {
  readonly viewer: Viewer;
  /** Only points for this role are shown; null: all. */
  readonly role: string | null;
  readonly open: readonly PointRow[];
  readonly ended: readonly PointRow[];
  /** The id before which older open points stand; null on the last page. */
  readonly older: string | null;
}

/** What people must look at: open points first, then the ones that were dealt with last. */
export function openPointPage({ viewer, role, open, ended, older }: OpenPointProps): VNode {
  return (
    <Shell title={say('points-title')} viewer={viewer}>
      <p class="quiet">{say('points-says')}</p>
      <RoleFilter role={role} />
      {open.length === 0 ? <p class="sentence">{say('points-none')}</p> : <OpenTable points={open} viewer={viewer} />}
      <OlderEntries path={role === null ? '/open-points' : `/open-points?role=${role}`} older={older} />
      {ended.length === 0 ? null : <EndedTable points={ended} viewer={viewer} />}
    </Shell>
  );
}

function RoleFilter({ role }: { readonly role: string | null }): VNode {
  return (
    <form method="get" action="/open-points">
      <label for="role">{say('points-role')}</label>{' '}
      <select id="role" name="role">
        <option value="" selected={role === null}>
          {say('points-all-roles')}
        </option>
        {roles
          .filter((one) => one !== 'device' && one !== 'auditor')
          .map((one) => (
            <option key={one} value={one} selected={one === role}>
              {say(`role-${one}`)}
            </option>
          ))}
      </select>{' '}
      <button type="submit">{say('points-show')}</button>
    </form>
  );
}

interface TableProps {
  readonly points: readonly PointRow[];
  readonly viewer: Viewer;
}

function OpenTable({ points, viewer }: TableProps): VNode {
  return (
    <Table
      caption={say('points-open', { count: points.length })}
      columns={[
        { head: say('points-what') },
        { head: say('points-subject') },
        { head: say('points-for') },
        { head: say('points-raised') },
      ]}
      rows={points.map((point) => ({
        key: point.id,
        cells: [
          <span class="reads">{sayLocally(point.cause, point.facts, viewer.timeZone)}</span>,
          <Subject point={point} />,
          say(`role-${point.role}`),
          localText(point.raisedAt, viewer.timeZone),
        ],
      }))}
    />
  );
}

function EndedTable({ points, viewer }: TableProps): VNode {
  return (
    <Table
      caption={say('points-ended', { count: points.length })}
      columns={[{ head: say('points-what') }, { head: say('points-how') }, { head: say('points-ended-at') }]}
      rows={points.map((point) => ({
        key: point.id,
        cells: [
          <span class="reads">{sayLocally(point.cause, point.facts, viewer.timeZone)}</span>,
          <>
            {say(`points-${point.how ?? 'cleared'}`)}
            {point.explanation === null ? null : <p>{point.explanation}</p>}
          </>,
          point.endedAt === null ? null : localText(point.endedAt, viewer.timeZone),
        ],
      }))}
    />
  );
}

function Subject({ point }: { readonly point: PointRow }): VNode {
  const name = say(point.subjectKind);
  const href = pageOfSubject(point.subjectKind, point.subjectId);
  return href === null ? <span>{name}</span> : <a href={href}>{name}</a>;
}
