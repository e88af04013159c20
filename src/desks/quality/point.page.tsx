import type { VNode } from 'preact';
import type { PointRow } from '../../open-points/open-points.js';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act } from '../../platform/web/kit/act.js';
import { TextEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { localText, sayLocally } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';

interface PointProps {
  readonly viewer: Viewer;
  readonly point: PointRow;
  readonly names: ReadonlyMap<string, string>;
  readonly trouble: FormTrouble | null;
}

/** One open point: what is so, where to look, and the answer. */
export function pointPage({ viewer, point, names, trouble }: PointProps): VNode {
  const person = point.personId === null ? null : (names.get(point.personId) ?? null);
  const href = pageOf[point.subjectKind]?.(point.subjectId) ?? null;
  return (
    <Shell title={say('point-title')} viewer={viewer}>
      <section class="card">
        <p class="sentence">{sayLocally(point.cause, point.facts, viewer.timeZone)}</p>
        <dl class="facts">
          <dt>{say('desk-since')}</dt>
          <dd>{localText(point.raisedAt, viewer.timeZone)}</dd>
          {person === null ? null : (
            <>
              <dt>{say('point-person')}</dt>
              <dd>{person}</dd>
            </>
          )}
        </dl>
        {href === null ? null : (
          <p>
            <a href={href}>{say('point-look')}</a>
          </p>
        )}
      </section>
      {point.how === null ? (
        <section class="card">
          <p>{say('point-says')}</p>
          <EntryForm viewer={viewer} action={`/quality/points/${point.id}`} trouble={trouble}>
            <TextEntry
              name="explanation"
              label={say('point-answer')}
              maxLength={500}
              trouble={trouble}
              isLong
              required
            />
            <Act says={say('point-act')} />
          </EntryForm>
        </section>
      ) : (
        <p>
          {say(`points-${point.how}`)} {point.explanation ?? ''}
        </p>
      )}
    </Shell>
  );
}

/** Where the thing that a point is about is looked at. */
const pageOf: Readonly<Record<string, (id: string) => string>> = {
  scale: () => '/plant',
  coder: () => '/plant',
  hopper: () => '/hoppers',
  'hopper-period': (id) => `/hopper-periods/${id}`,
  'held-unit': (id) => `/quality/holds/${id.split('.')[0] ?? ''}`,
  complaint: (id) => `/quality/complaints/${id}`,
  hold: (id) => `/quality/holds/${id}`,
  account: (id) => `/accounts/${id}`,
  pallet: (id) => `/quality/pallets/${id}`,
  lot: (id) => `/quality/lots/${id}`,
  'bulk-bag': (id) => `/quality/bags/${id}`,
  'packing-run': (id) => `/runs/${id}`,
  delivery: (id) => `/deliveries/${id}`,
};
