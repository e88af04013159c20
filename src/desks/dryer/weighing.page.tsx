import type { VNode } from 'preact';
import { spacedBagNumber } from '../../core/identifiers/bag-number.js';
import { say } from '../../platform/sentences/sentences.js';
import { kilogramsText } from '../../platform/web/figures-text.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act, ActLink } from '../../platform/web/kit/act.js';
import { NumberEntry, TextEntry } from '../../platform/web/kit/entries.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import { Figures } from '../../platform/web/kit/figures.js';
import { localText } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import { mayCorrect } from './dryer.page.js';

/** A weighing as the one who typed it sees it. */
export interface OwnWeighing {
  readonly id: string;
  readonly bagNumber: string;
  readonly dryerId: string | null;
  readonly grossGrams: number;
  readonly tareGrams: number;
  readonly netGrams: number;
  readonly weighedAt: string;
  readonly personId: string | null;
  readonly status: string;
}

interface WeighingProps {
  readonly viewer: Viewer;
  readonly weighing: OwnWeighing;
  readonly trouble: FormTrouble | null;
}

/** What was typed for a bag, and the place to put it right. The old figures stay in the records. */
export function weighingPage({ viewer, weighing, trouble }: WeighingProps): VNode {
  const { id, bagNumber, dryerId, grossGrams, tareGrams, netGrams, weighedAt } = weighing;
  const mass = (label: string, grams: number) => ({ label: say(label), value: kilogramsText(grams), unit: 'kg' });
  return (
    <Shell title={say('weighing-title', { bag: spacedBagNumber(bagNumber) })} viewer={viewer} use="tablet">
      <Figures
        of={[
          mass('dryer-gross-short', grossGrams),
          mass('dryer-tare', tareGrams),
          mass('dryer-net', netGrams),
          { label: say('dryer-closed-at'), value: localText(weighedAt, viewer.timeZone) },
        ]}
      />
      {mayCorrect(viewer, weighing) ? (
        <EntryForm viewer={viewer} action={`/dryer/weighings/${id}`} trouble={trouble}>
          <p>{say('weighing-says')}</p>
          <NumberEntry name="grossGrams" label={say('weighing-gross')} unit="kg" trouble={trouble} autofocus />
          <NumberEntry name="tareGrams" label={say('weighing-tare')} unit="kg" trouble={trouble} />
          <TextEntry name="reason" label={say('weighing-reason')} required maxLength={300} trouble={trouble} />
          <Act says={say('weighing-correct')} />
        </EntryForm>
      ) : (
        <p>{say('weighing-not-yours', { bag: spacedBagNumber(bagNumber) })}</p>
      )}
      <p class="acts">
        <ActLink href={dryerId === null ? '/dryer' : `/dryer/${dryerId}`} says={say('dryer-back')} />
      </p>
    </Shell>
  );
}
