import type { VNode } from 'preact';
import { spacedBagNumber } from '../../core/identifiers/bag-number.js';
import { say } from '../../platform/sentences/sentences.js';
import { kilogramsText } from '../../platform/web/figures-text.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act } from '../../platform/web/kit/act.js';
import { ChoiceEntry, HiddenEntry, NumberEntry, TextEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { clockText } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import type { DryerDesk, HangingBag, RunInHand } from './dryer-desk.js';

interface FormProps {
  readonly viewer: Viewer;
  readonly desk: DryerDesk;
  readonly trouble?: { readonly of: string; readonly why: FormTrouble } | null | undefined;
}

/** The bag that hangs under the filler: its number big, and what it weighs. */
export function BagInHand(props: FormProps & { readonly bag: HangingBag; readonly mayFill: boolean }): VNode {
  const { viewer, bag, mayFill } = props;
  return (
    <section class="card dryer-bag" aria-labelledby="bag-in-hand">
      <h2 id="bag-in-hand">{say('dryer-bag-on')}</h2>
      <p class="digits dryer-number">{spacedBagNumber(bag.number)}</p>
      <p class="quiet">
        {say('dryer-hangs-since', { at: clockText(bag.fillStartedAt, viewer.timeZone), run: bag.runNumber })}{' '}
        {say('dryer-safe-load', { kilograms: kilogramsText(bag.safeLoadGrams) })}
      </p>
      {mayFill ? <CloseForm {...props} /> : null}
    </section>
  );
}

function CloseForm({ viewer, desk, bag, trouble }: FormProps & { readonly bag: HangingBag }): VNode {
  const why = trouble?.of === 'close' ? trouble.why : null;
  const confirmed = why?.facts['confirmed'];
  const kilograms = why?.facts['kilograms'] ?? '';
  return (
    <EntryForm viewer={viewer} action={`/dryer/${desk.dryer.id}/closes`} trouble={why} id="close-bag">
      <HiddenEntry name="bagId" value={bag.id} />
      <NumberEntry
        name="grossGrams"
        label={say('dryer-gross')}
        hint={say('dryer-gross-hint')}
        unit="kg"
        required
        autofocus
        trouble={why}
      />
      <TareEntry bag={bag} why={why} />
      <ScaleEntry desk={desk} why={why} />
      <p class="quiet">{say('label-will-be-in', { language: desk.paperLanguage })}</p>
      <p class="acts">
        <Act says={say('dryer-close-and-label')} />
        {typeof confirmed === 'string' ? (
          <Act
            name="confirmed"
            value={confirmed}
            tone="careful"
            says={say(why?.code === 'tare-not-usual' ? 'dryer-tare-is-so' : 'dryer-net-is-so', { kilograms })}
          />
        ) : null}
      </p>
    </EntryForm>
  );
}

/** The usual tare of the type stands; who weighed the empty bag types what it weighed. */
function TareEntry({ bag, why }: { readonly bag: HangingBag; readonly why: FormTrouble | null }): VNode {
  const entry = (
    <NumberEntry
      name="tareGrams"
      label={say('dryer-tare')}
      hint={say('dryer-tare-hint')}
      unit="kg"
      required={bag.usualTareGrams === null}
      trouble={why}
    />
  );
  if (bag.usualTareGrams === null) return entry;
  const isTyped = typeof why?.entered['tareGrams'] === 'string' && why.entered['tareGrams'] !== '';
  return (
    <details open={isTyped || why?.fields['tareGrams'] !== undefined}>
      <summary>
        {say('dryer-usual-tare', { kilograms: kilogramsText(bag.usualTareGrams), type: bag.bagTypeName })}
      </summary>
      {entry}
    </details>
  );
}

/** The scale of the last bag of this dryer, if there was one. */
function ScaleEntry({ desk, why }: { readonly desk: DryerDesk; readonly why: FormTrouble | null }): VNode {
  const last = desk.lastBags[0]?.scaleId ?? desk.scales[0]?.scale.id;
  const [only] = desk.scales;
  if (only === undefined) return <p class="wrong">{say('dryer-no-scale')}</p>;
  const doubtful = desk.scales.find(({ scale }) => scale.id === last);
  const warning =
    doubtful !== undefined && (doubtful.isOverdue || doubtful.hasFailed) ? (
      <p class="caution">
        {say('dryer-scale-doubtful', { scale: doubtful.scale.code })}{' '}
        <a href="/dryer/scales">{say('dryer-to-scales')}</a>
      </p>
    ) : null;
  if (desk.scales.length === 1) {
    return (
      <>
        <HiddenEntry name="scaleId" value={only.scale.id} />
        {warning}
      </>
    );
  }
  const choices = desk.scales.map(({ scale }) => ({ value: scale.id, says: scale.name, about: scale.code }));
  return (
    <>
      <ChoiceEntry name="scaleId" label={say('dryer-scale')} value={last} choices={choices} required trouble={why} />
      {warning}
    </>
  );
}

/** No bag hangs: the next one is hung up by one tap. */
export function NextBag({ viewer, desk, run, trouble }: FormProps & { readonly run: RunInHand }): VNode {
  const why = trouble?.of === 'bag' ? trouble.why : null;
  const [lastBag] = desk.lastBags;
  const types = desk.bagTypes;
  const usual = types.find(({ id }) => id === lastBag?.bagTypeId)?.id ?? types[0]?.id;
  return (
    <EntryForm viewer={viewer} action={`/dryer/${desk.dryer.id}/bags`} trouble={why} id="bag-on" class="entry card">
      <HiddenEntry name="run" value={run.number} />
      <BagTypeEntry desk={desk} usual={usual} why={why} />
      <Act says={say('dryer-hang-bag')} />
      <details open={why?.fields['linerLot'] !== undefined}>
        <summary>{linerSummary(lastBag?.linerLot ?? null)}</summary>
        <TextEntry
          name="linerLot"
          label={say('dryer-liner')}
          hint={say('dryer-liner-hint')}
          value={lastBag?.linerLot ?? ''}
          maxLength={60}
          isCode
          trouble={why}
        />
      </details>
    </EntryForm>
  );
}

function linerSummary(lot: string | null): string {
  return lot === null ? say('dryer-no-liner') : say('dryer-same-liner', { lot });
}

interface BagTypeProps {
  readonly desk: DryerDesk;
  readonly usual: string | undefined;
  readonly why: FormTrouble | null;
}

function BagTypeEntry({ desk, usual, why }: BagTypeProps): VNode {
  const [only] = desk.bagTypes;
  if (only === undefined) {
    return (
      <>
        <p>{say('dryer-no-bag-type')}</p>
        <NumberEntry name="safeLoadGrams" label={say('dryer-load')} unit="kg" required trouble={why} />
      </>
    );
  }
  if (desk.bagTypes.length === 1) {
    const facts = { type: only.name, kilograms: kilogramsText(only.safeLoadGrams) };
    return (
      <>
        <HiddenEntry name="bagTypeId" value={only.id} />
        <p class="quiet">{say('dryer-type-is', facts)}</p>
      </>
    );
  }
  const choices = desk.bagTypes.map(({ id, name, safeLoadGrams }) => ({
    value: id,
    says: name,
    about: say('dryer-safe-load', { kilograms: kilogramsText(safeLoadGrams) }),
  }));
  return (
    <ChoiceEntry
      name="bagTypeId"
      label={say('dryer-bag-type')}
      as="tiles"
      value={usual}
      choices={choices}
      required
      trouble={why}
    />
  );
}
