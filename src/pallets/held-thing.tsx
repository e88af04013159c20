import type { VNode } from 'preact';
import type { ScopeKind } from '../disposition/standings.js';
import { say } from '../platform/sentences/sentences.js';

interface HeldThingProps {
  readonly kind: ScopeKind;
  readonly id: string;
  readonly name: string | null;
  /** Instead of its kind and name. */
  readonly says?: string;
}

/** What a hold is on, with the way to it. A shift has no page of its own. */
export function HeldThing({ kind, id, name, says }: HeldThingProps): VNode {
  const text = says ?? [say(`scope-${kind}`), name].filter((part) => part !== null).join(' ');
  if (kind === 'dryer-shift' || kind === 'packing-shift') return <span>{text}</span>;
  if (kind === 'hopper-period') return <a href={`/hopper-periods/${id}`}>{text}</a>;
  return <a href={`/thread?code=${encodeURIComponent(name ?? id)}`}>{text}</a>;
}
