import { randomUUID } from 'node:crypto';
import type { VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import { countText } from '../../platform/web/figures-text.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { HiddenEntry } from '../../platform/web/kit/entries.js';
import { ScanBand, type Scanned } from '../../platform/web/kit/scan-band.js';
import type { Viewer } from '../../platform/web/request.js';
import type { LoadingView } from './loading-view.js';
import { lastDigits } from './unit-text.js';

interface ScanToLoadProps {
  readonly viewer: Viewer;
  /** The address of the delivery at this desk. */
  readonly base: string;
  readonly loading: LoadingView;
  readonly trouble: FormTrouble | null;
  readonly putBack: string | null;
}

/** The band that loads what is scanned, and says yes with the place or no with what to do. */
export function ScanToLoad({ viewer, base, loading, trouble, putBack }: ScanToLoadProps): VNode {
  return (
    <ScanBand
      action={`${base}/scans`}
      method="post"
      hint={say('dock-hint')}
      scanned={trouble === null ? yes(loading) : no(trouble, putBack)}
      fields={
        <>
          <HiddenEntry name="csrf" value={viewer.csrfToken} />
          <HiddenEntry name="formKey" value={randomUUID()} />
        </>
      }
    />
  );
}

function yes({ last }: LoadingView): Scanned | null {
  if (last === null) return null;
  const { name, place, lots, packCount } = last;
  const facts = { place, lots: lots.join(', ') || '–', packs: packCount === null ? '–' : countText(packCount) };
  return { word: say('dock-yes'), digits: lastDigits(name), sentence: say('dock-yes-says', facts), tone: 'quiet' };
}

function no(trouble: FormTrouble, putBack: string | null): Scanned {
  const [wrong] = Object.values(trouble.fields);
  const sentence = [wrong ?? trouble.sentence, putBack === null ? null : say('dock-put-back', { place: putBack })];
  const scanned = typeof trouble.entered['scan'] === 'string' ? trouble.entered['scan'].trim() : '';
  return {
    word: say('dock-no'),
    digits: lastDigits(scanned),
    sentence: sentence.filter((part) => part !== null).join(' '),
    tone: 'must-not',
  };
}
