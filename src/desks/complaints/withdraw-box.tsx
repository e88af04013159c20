import type { VNode } from 'preact';
import { correctionReasons } from '../../journal/void-fact.js';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act } from '../../platform/web/kit/act.js';
import { EntryForm } from '../../platform/web/kit/entry-form.js';
import type { Viewer } from '../../platform/web/request.js';

interface WithdrawProps {
  readonly viewer: Viewer;
  readonly id: string;
  readonly summary: string;
  readonly action: string;
  readonly trouble: FormTrouble | null;
}

/** Something is withdrawn with its reason. Several stand on one page, so fields are named by their labels, not by ids. */
export function WithdrawForm({ viewer, id, summary, action, trouble }: WithdrawProps): VNode {
  return (
    <details open={trouble !== null}>
      <summary>{summary}</summary>
      <EntryForm viewer={viewer} id={id} action={action} trouble={trouble}>
        <fieldset class="tiles">
          <legend>{say('withdraw-why')}</legend>
          <div>
            {correctionReasons.map((why) => (
              <label key={why} class="tile">
                <input type="radio" name="why" value={why} checked={trouble?.entered['why'] === why} required />
                <span>{say(`withdraw-${why}`)}</span>
              </label>
            ))}
          </div>
        </fieldset>
        <div class="field" data-field="reason">
          <label>
            {say('withdraw-reason')}
            <input type="text" name="reason" maxLength={500} autocomplete="off" required />
          </label>
        </div>
        <Act says={summary} tone="careful" />
      </EntryForm>
    </details>
  );
}
