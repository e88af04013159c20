import type { VNode } from 'preact';
import { mayDo } from '../platform/actor.js';
import { say } from '../platform/sentences/sentences.js';
import { ActLink } from '../platform/web/kit/act.js';
import type { Viewer } from '../platform/web/request.js';

/** Where a hold on a thing is looked at before it is placed; `next` is where one goes on afterwards. */
export function holdNewPath(kind: string, id: string, next: string | null = null): string {
  const on = next === null ? '' : `&next=${encodeURIComponent(next)}`;
  return `/quality/holds/new?kind=${kind}&id=${id}${on}`;
}

interface HoldLinkProps {
  readonly viewer: Viewer;
  /** What it is, by the word of its scope; a delivery is held by what stands on it. */
  readonly kind: string;
  readonly id: string;
  readonly says?: string | undefined;
}

/** The hold that anybody may place who sees a thing; nothing for those who only look. */
export function HoldLink({ viewer, kind, id, says }: HoldLinkProps): VNode | null {
  if (!mayDo(viewer.actor.roles, 'place-holds')) return null;
  return <ActLink href={holdNewPath(kind, id)} says={says ?? say('hold-this')} tone="careful" />;
}
