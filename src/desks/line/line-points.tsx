import type { VNode } from 'preact';
import { mayDo } from '../../platform/actor.js';
import { say } from '../../platform/sentences/sentences.js';
import { ActLink } from '../../platform/web/kit/act.js';
import { clockText, sayLocally } from '../../platform/web/local-text.js';
import type { PointRow } from '../../open-points/open-points.js';
import type { Viewer } from '../../platform/web/request.js';
import type { ShiftView } from './shift-view.js';

/** So many are shown; the others are one touch away. */
const pointsShown = 6;

/** What is open on this line: each with one act. */
export function LinePoints({ viewer, view }: { readonly viewer: Viewer; readonly view: ShiftView }): VNode {
  const { points, line, stops } = view;
  const unsaid = stops.filter(({ reason }) => reason === 'not-said');
  const pressing = view.checks.filter(({ word }) => word === 'failed' || word === 'overdue' || word === 'due');
  // Once it is overdue it is a point of its own.
  const sample = view.handSample?.word === 'due' ? view.handSample : null;
  const count = points.length + unsaid.length + (pressing.length > 0 ? 1 : 0) + (sample === null ? 0 : 1);
  if (count === 0) return <p class="quiet">{say('line-nothing-open')}</p>;
  return (
    <section class="line-points">
      <h2>{say('line-open', { count })}</h2>
      <ul>
        {pressing.length === 0 ? null : (
          <li>
            <span>{say('line-checks-due', { count: pressing.length })}</span>
            <ActLink href={`/line/${line.id}/checks`} says={say('line-point-do')} />
          </li>
        )}
        {sample === null ? null : (
          <li>
            <span>{say('line-sample-due', { count: sample.plan.packCount })}</span>
            <ActLink href={`/line/${line.id}/hand-samples`} says={say('line-point-do')} />
          </li>
        )}
        {unsaid.slice(0, pointsShown).map((stop) => (
          <li key={stop.id}>
            <span>{say('line-stop-unsaid', { at: clockText(stop.stoppedAt, viewer.timeZone) })}</span>
            {mayDo(viewer.actor.roles, 'run-line') ? (
              <ActLink href={`/line/${line.id}/stops/${stop.id}`} says={say('line-point-do')} />
            ) : null}
          </li>
        ))}
        {points.slice(0, Math.max(0, pointsShown - unsaid.length)).map((point) => (
          <li key={point.id}>
            <span>{sayLocally(point.cause, point.facts, viewer.timeZone)}</span>
            <ActLink href={hrefOf(point, line.id)} says={say('line-point-do')} />
          </li>
        ))}
      </ul>
      {count > pointsShown ? <a href="/open-points?role=line-lead">{say('line-points-all', { count })}</a> : null}
    </section>
  );
}

/** Where a point is dealt with. */
function hrefOf({ cause, subjectKind, subjectId }: PointRow, lineId: string): string {
  const at = `/line/${lineId}`;
  switch (cause) {
    case 'label-not-scanned-back':
      return `${at}/pallets/${subjectId}`;
    case 'packs-without-code':
      return `/thread?code=${subjectId}`;
    case 'hand-sample-overdue':
      return `${at}/hand-samples`;
    case 'weigher-silent':
      return `/weigher-silences/${subjectId}`;
    case 'handover-not-confirmed':
      return `${at}/handovers/${subjectId}`;
    default:
      return subjectKind === 'hopper-period' ? `/hopper-periods/${subjectId}` : '/open-points?role=line-lead';
  }
}
