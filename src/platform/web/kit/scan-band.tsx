import type { ComponentChildren, VNode } from 'preact';
import { say } from '../../sentences/sentences.js';

/** What the last scan was, and what may be done with it. */
export interface Scanned {
  /** One big word: BAG, HOLD, UNKNOWN. */
  readonly word: string;
  readonly sentence: string;
  readonly tone: 'quiet' | 'attention' | 'must-not';
  /** The last digits, to tell it from the scan before. */
  readonly digits?: string | undefined;
}

interface ScanBandProps {
  /** Where a scan goes: `GET action?scan=…`. */
  readonly action: string;
  readonly scanned?: Scanned | null | undefined;
  readonly hint?: string | undefined;
  /** Hidden fields of the scan's form. */
  readonly fields?: ComponentChildren | undefined;
  readonly method?: 'get' | 'post' | undefined;
  /** The acts that the scan offers. */
  readonly children?: ComponentChildren | undefined;
}

/** The band for the last scan. It stands at one place and never moves; a scanner needs no focus for it. */
export function ScanBand({ action, scanned, hint, fields, method = 'get', children }: ScanBandProps): VNode {
  const last = scanned ?? null;
  return (
    <section id="band" class={`band ${last?.tone ?? 'quiet'}`} aria-label={say('band-title')}>
      <form class="scan" method={method} action={action} data-scan>
        {fields}
        <label for="scan" class="unseen">
          {say('band-scan')}
        </label>
        <input
          id="scan"
          name="scan"
          type="text"
          class="code"
          maxLength={200}
          autocomplete="off"
          autofocus
          spellcheck={false}
          placeholder={say('band-scan')}
        />
        <button type="submit" class="act plain">
          {say('band-look')}
        </button>
      </form>
      <div class="said" role="status" aria-live="polite">
        {last === null ? (
          <p class="quiet">{hint ?? say('band-hint')}</p>
        ) : (
          <>
            <p class="word">
              {last.word}
              {last.digits === undefined ? null : <span class="digits"> {last.digits}</span>}
            </p>
            <p>{last.sentence}</p>
          </>
        )}
      </div>
      <div class="acts">{children}</div>
    </section>
  );
}
