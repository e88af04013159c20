import type { VNode } from 'preact';
import type { HoldLine } from '../../disposition/holds.js';
import { say } from '../../platform/sentences/sentences.js';
import { Act, ActLink } from '../../platform/web/kit/act.js';
import { HiddenEntry, TextEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { localText } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import type { NarrowingLine, PartLine } from './narrowing-lines.js';

interface NarrowingsProps {
  readonly viewer: Viewer;
  readonly hold: HoldLine;
  readonly narrowings: readonly NarrowingLine[];
  readonly mayNarrow: boolean;
}

/** What quality took out of a hold: who, when and why; and the way to take out more, or to take a narrowing back. */
export function Narrowings({ viewer, hold, narrowings, mayNarrow }: NarrowingsProps): VNode | null {
  if (narrowings.length === 0 && !mayNarrow) return null;
  return (
    <section class="card" aria-labelledby="narrowings">
      <h2 id="narrowings">{say('narrowings-head')}</h2>
      <p>{say(narrowings.length === 0 ? 'narrowings-none' : 'narrowings-says')}</p>
      {narrowings.map((narrowing) => (
        <Narrowing key={narrowing.id} {...{ viewer, hold, narrowing, mayNarrow }} />
      ))}
      {mayNarrow ? <ActLink href={`/quality/holds/${hold.id}/narrow`} says={say('narrow-open')} /> : null}
    </section>
  );
}

interface NarrowingProps extends Omit<NarrowingsProps, 'narrowings'> {
  readonly narrowing: NarrowingLine;
}

function Narrowing({ viewer, hold, narrowing, mayNarrow }: NarrowingProps): VNode {
  const { id, reason, assessment, narrowedAt, by, parts } = narrowing;
  const { timeZone } = viewer;
  return (
    <article>
      <p class="sentence">
        {say('narrowing-by', { by: by ?? say('narrowing-by-nobody'), at: localText(narrowedAt, timeZone) })} {reason}
      </p>
      {assessment === null ? (
        hold.hazardSet === 'quality' ? null : (
          <p class="caution">{say('narrowing-without-assessment')}</p>
        )
      ) : (
        <p>{say('narrowing-assessed', { assessment })}</p>
      )}
      <ul>
        {parts.map((part, place) => (
          <li key={place}>{partText(part, timeZone)}</li>
        ))}
      </ul>
      {mayNarrow ? (
        <details>
          <summary>{say('widen-head')}</summary>
          <EntryForm viewer={viewer} action={`/quality/holds/${hold.id}/widen`} id={`widen-${id}`}>
            <HiddenEntry name="narrowing" value={id} />
            <TextEntry name="widenReason" label={say('widen-reason')} maxLength={1000} required />
            <Act says={say('widen-act')} tone="plain" />
          </EntryForm>
        </details>
      ) : null}
    </article>
  );
}

function partText({ kind, name, fromAt, untilAt }: PartLine, timeZone: string): string {
  const unit = `${say(`scope-${kind}`)} ${name}`;
  if (fromAt === null || untilAt === null) return unit;
  return say('narrowing-minutes', { unit, from: localText(fromAt, timeZone), until: localText(untilAt, timeZone) });
}
