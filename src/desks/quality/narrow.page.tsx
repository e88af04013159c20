import type { VNode } from 'preact';
import type { HoldRow } from '../../disposition/standings.js';
import type { ProofWay } from '../../people/prove-again.js';
import { say } from '../../platform/sentences/sentences.js';
import { countText } from '../../platform/web/figures-text.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act } from '../../platform/web/kit/act.js';
import { HiddenEntry, TextEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import type { NarrowedParts } from '../../tracing/hold.form.js';
import type { NarrowingPreview } from '../../tracing/narrowing-preview.js';
import { palletLinesByStatus } from './placed-pallets.js';
import { ProofEntries } from './proof-entries.js';
import { BagTable, PlaceTable } from './reach-tables.js';

interface NarrowProps {
  readonly viewer: Viewer;
  readonly hold: HoldRow;
  readonly preview: NarrowingPreview;
  readonly sequence: number;
  readonly parts: NarrowedParts;
  readonly way: ProofWay;
  readonly trouble: FormTrouble | null;
}

/** A narrowing before it is signed: what it frees, where that is, what stays, and the signature. */
export function narrowPage({ viewer, hold, preview, sequence, parts, way, trouble }: NarrowProps): VNode {
  const { freed, freedBags, stays, staysBags } = preview;
  const counts = {
    ...{ pallets: freed.length, packs: countText(preview.freedPackCount), bags: freedBags.length },
    ...{ left: stays.length, leftPacks: countText(preview.staysPackCount), leftBags: staysBags.length },
  };
  const seen = { kind: 'hold', id: hold.id, sequence };
  return (
    <Shell title={say('narrow-title', { hold: hold.number })} viewer={viewer}>
      <section class="card" aria-labelledby="frees">
        <h2 id="frees">{say('narrow-frees')}</h2>
        <p class="sentence">{say('narrow-frees-says', counts)}</p>
        <BagTable bags={freedBags} />
        {palletLinesByStatus(freed).map((place) => (
          <PlaceTable key={place.status} place={place} mark="at" />
        ))}
      </section>
      <section class="card" aria-labelledby="stays">
        <h2 id="stays">{say('narrow-stays')}</h2>
        <BagTable bags={staysBags} />
        {palletLinesByStatus(stays).map((place) => (
          <PlaceTable key={place.status} place={place} mark="at" />
        ))}
      </section>
      <section class="card" aria-labelledby="sign">
        <h2 id="sign">{say('narrow-sign')}</h2>
        <p>{say('narrow-sign-says')}</p>
        <EntryForm viewer={viewer} action={`/quality/holds/${hold.id}/narrow`} trouble={trouble} seen={seen}>
          <ChosenParts parts={parts} />
          <SignEntries hold={hold} trouble={trouble} />
          <ProofEntries way={way} trouble={trouble} />
          <Act says={say('narrow-act')} tone="careful" />
        </EntryForm>
      </section>
      <p>
        <a href={`/quality/holds/${hold.id}/narrow`}>{say('narrow-anew')}</a>
      </p>
    </Shell>
  );
}

function ChosenParts({ parts }: { readonly parts: NarrowedParts }): VNode {
  return (
    <>
      {(['bagIds', 'palletIds', 'lotIds'] as const).flatMap((name) =>
        (parts[name] ?? []).map((id) => <HiddenEntry key={id} name={name} value={id} />),
      )}
      {(['run', 'fromAt', 'untilAt'] as const).map((name) => {
        const value = parts[name] ?? null;
        return value === null ? null : <HiddenEntry key={name} name={name} value={value} />;
      })}
    </>
  );
}

function SignEntries({ hold, trouble }: Pick<NarrowProps, 'hold' | 'trouble'>): VNode {
  const isSafety = hold.hazard === 'safety';
  return (
    <>
      <TextEntry name="narrowReason" label={say('narrow-reason')} maxLength={1000} trouble={trouble} isLong required />
      <TextEntry
        name="assessment"
        label={say(isSafety ? 'narrow-assessment' : 'narrow-assessment-optional')}
        hint={say('narrow-assessment-hint')}
        maxLength={4000}
        trouble={trouble}
        isLong
        required={isSafety}
      />
    </>
  );
}
