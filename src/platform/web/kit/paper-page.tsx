import type { VNode } from 'preact';
import { isOnPaper, type Language } from '../../sentences/language.js';
import { say } from '../../sentences/sentences.js';
import type { Viewer } from '../request.js';
import { ActLink } from './act.js';

interface PaperPageLinkProps {
  readonly viewer: Viewer;
  readonly href: string;
  /** The language of the plant's papers. */
  readonly paperLanguage: Language;
}

/** From a page to what it is on paper, where papers speak another language than its reader, and back. */
export function PaperPageLink({ viewer, href, paperLanguage }: PaperPageLinkProps): VNode | null {
  if (paperLanguage === viewer.language) return null;
  return (
    <p class="acts">
      {isOnPaper() ? (
        <ActLink href={href} says={say('paper-page-back', {}, viewer.language)} />
      ) : (
        <ActLink href={`${href}?for=paper`} says={say('paper-page-to', { language: paperLanguage })} />
      )}
    </p>
  );
}
