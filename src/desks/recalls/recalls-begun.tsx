import type { VNode } from 'preact';
import { mayDo } from '../../platform/actor.js';
import { say } from '../../platform/sentences/sentences.js';
import { ActLink } from '../../platform/web/kit/act.js';
import type { Viewer } from '../../platform/web/request.js';
import type { RecallRow } from '../../recalls/recalls.js';

interface BegunProps {
  readonly viewer: Viewer;
  readonly origin: { readonly kind: 'hold' | 'complaint'; readonly id: string };
  readonly recalls: readonly RecallRow[];
}

/** The recalls that began with a hold or a complaint, and the way to begin one; nothing for who may neither. */
export function RecallsBegun({ viewer, origin, recalls }: BegunProps): VNode | null {
  const mayRun = mayDo(viewer.actor.roles, 'run-recalls');
  if (recalls.length === 0 && !mayRun) return null;
  return (
    <section class="card">
      {recalls.length === 0 ? null : (
        <p>
          {say('recalls-of-this')}:{' '}
          {recalls.map(({ id, number }, place) => (
            <span key={id}>
              {place === 0 ? '' : ', '}
              <a href={`/quality/recalls/${id}`}>{number}</a>
            </span>
          ))}
        </p>
      )}
      {mayRun ? (
        <ActLink href={`/quality/recalls/new?${origin.kind}=${origin.id}`} says={say('thread-recall-these')} />
      ) : null}
    </section>
  );
}
