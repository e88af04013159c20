import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
import { nameOfField } from '../platform/web/kit/entry-form.js';
import { BarePage } from '../platform/web/shell.js';
import type { LostForm } from './lost-form.js';

/** After signing in again: what had been entered when the session was over, and one button that sends it. */
export function lostFormPage({ form, csrfToken }: { readonly form: LostForm; readonly csrfToken: string }): VNode {
  const shown = form.fields.filter(([name, value]) => !['formKey', 'seen'].includes(name) && value !== '');
  return (
    <BarePage title={say('lost-form-title')}>
      <p class="sentence">{say('lost-form-says')}</p>
      <dl class="figures">
        {shown.map(([name, value]) => (
          <div key={`${name} ${value}`}>
            <dt>{nameOfField(name)}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      <form class="card" method="post" action={form.path}>
        <input type="hidden" name="csrf" value={csrfToken} />
        {form.fields.map(([name, value]) => (
          <input key={`${name} ${value}`} type="hidden" name={name} value={value} />
        ))}
        <p>
          <button type="submit">{say('lost-form-send')}</button>
        </p>
      </form>
      <p>
        <a href="/">{say('lost-form-leave')}</a>
      </p>
    </BarePage>
  );
}
