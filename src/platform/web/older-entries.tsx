import type { VNode } from 'preact';
import { say } from '../sentences/sentences.js';

interface OlderEntriesProps {
  /** Address of the list, with what it is narrowed to. */
  readonly path: string;
  /** The key before which older entries stand; null on the last page. */
  readonly older: string | number | null;
}

/** The way to the next page of a list; nothing on the last. */
export function OlderEntries({ path, older }: OlderEntriesProps): VNode | null {
  if (older === null) return null;
  const joint = path.includes('?') ? '&' : '?';
  return (
    <p class="pages">
      <a href={`${path}${joint}before=${older}`}>{say('older-entries')}</a>
    </p>
  );
}
