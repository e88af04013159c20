import type { VNode } from 'preact';
import type { ContentRow, PalletRow } from '../../pallets/pallet-rows.js';
import type { Language } from '../../platform/sentences/language.js';
import { say } from '../../platform/sentences/sentences.js';
import { countText } from '../../platform/web/figures-text.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act, ActLink } from '../../platform/web/kit/act.js';
import { HiddenEntry, NumberEntry, TextEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import type { Viewer } from '../../platform/web/request.js';
import { ActPage } from './act.page.js';
import type { LineNow } from './line-rows.js';

interface LineProps {
  readonly viewer: Viewer;
  readonly at: LineNow;
  readonly trouble?: FormTrouble | null | undefined;
}

interface PartProps extends LineProps {
  /** That of the label, before it is printed. */
  readonly paperLanguage: Language;
}

/** A pallet that is not full, or one that was refused: how many packs stand on it. */
export function palletPartPage({ viewer, at, trouble, paperLanguage }: PartProps): VNode {
  const { run, line } = at;
  return (
    <ActPage viewer={viewer} at={at} title={say('pallet-part-title')}>
      {run === null ? (
        <p class="sentence">{say('line-no-run')}</p>
      ) : (
        <EntryForm viewer={viewer} action={`/line/${line.id}/pallets`} trouble={trouble} queue="pallet">
          <HiddenEntry name="run" value={run.number} />
          <NumberEntry
            name="packCount"
            label={say('field-packs-on-pallet')}
            hint={say('field-packs-on-pallet-hint')}
            trouble={trouble}
            autofocus
          />
          <p class="quiet">{say('label-will-be-in', { language: paperLanguage })}</p>
          <Act says={say('pallet-part-act')} />
        </EntryForm>
      )}
      {trouble?.code === 'lot-unknown' ? (
        <ActLink href={`/line/${line.id}/code`} says={say('line-to-code')} tone="asked" />
      ) : null}
    </ActPage>
  );
}

interface BackProps extends LineProps {
  readonly pallet: PalletRow;
  readonly contents: readonly ContentRow[];
  readonly paperId: string | null;
}

/** The label of a pallet: print it, stick it on, scan it back on that pallet. */
export function palletBackPage({ viewer, at, pallet, contents, paperId, trouble }: BackProps): VNode {
  const lots = [...new Set(contents.map(({ lotCode }) => lotCode))].join(', ');
  const isSwapped = trouble?.code === 'label-of-another-pallet';
  const other = String(trouble?.facts['other'] ?? '');
  return (
    <ActPage viewer={viewer} at={at} title={say('pallet-back-title', { pallet: pallet.sscc.slice(-4) })}>
      <p class="sentence">
        <span class="code big">{pallet.sscc}</span>
        <br />
        {say('pallet-back-holds', { packCount: countText(pallet.packCount), format: pallet.formatName, lots })}
        {pallet.isFull ? null : <strong> {say('label-part')}</strong>}
      </p>
      {paperId === null ? null : <ActLink href={`/papers/${paperId}/file`} says={say('pallet-back-label')} />}
      <EntryForm viewer={viewer} action={`/line/${at.line.id}/pallets/${pallet.id}`} trouble={trouble} id="scan-back">
        <TextEntry
          name="label"
          label={say('field-label-back')}
          hint={say('field-label-back-hint')}
          isCode
          required
          maxLength={200}
          autofocus
          trouble={trouble}
        />
        <TextEntry name="packCode" label={say('field-pack-code')} isCode maxLength={120} trouble={trouble} />
        <Act says={say('pallet-back-act')} />
      </EntryForm>
      {isSwapped ? (
        <ActLink
          href={`/line/${at.line.id}/swap?one=${pallet.sscc}&other=${encodeURIComponent(other)}`}
          says={say('line-to-swap')}
        />
      ) : null}
    </ActPage>
  );
}

interface SwapProps extends LineProps {
  readonly one: string;
  readonly other: string;
}

/** Two labels stick on each other's pallet: what is recorded under them is exchanged. */
export function swapPage({ viewer, at, one, other, trouble }: SwapProps): VNode {
  return (
    <ActPage viewer={viewer} at={at} title={say('line-to-swap')}>
      <p>{say('swap-says')}</p>
      <EntryForm viewer={viewer} action={`/line/${at.line.id}/swap`} trouble={trouble}>
        <TextEntry
          name="one"
          label={say('field-one-label')}
          isCode
          required
          value={one}
          maxLength={200}
          trouble={trouble}
          autofocus
        />
        <TextEntry
          name="other"
          label={say('field-other-label')}
          isCode
          required
          value={other}
          maxLength={200}
          trouble={trouble}
        />
        <TextEntry name="reason" label={say('field-what-happened')} required maxLength={200} trouble={trouble} />
        <Act says={say('swap-act')} tone="careful" />
      </EntryForm>
    </ActPage>
  );
}
