import { randomUUID } from 'node:crypto';
import type { ComponentChildren, VNode } from 'preact';
import { say } from '../../sentences/sentences.js';
import type { FormTrouble } from '../form-trouble.js';
import type { Viewer } from '../request.js';

interface EntryFormProps {
  readonly viewer: Viewer;
  /** The page's own address to send to. */
  readonly action: string;
  readonly trouble?: FormTrouble | null | undefined;
  /** What it enters, where a device may keep it while the network is away: a word such as `tip`. */
  readonly queue?: string | undefined;
  /** The thing that it changes, and how far the page has seen it. */
  readonly seen?: { readonly kind: string | undefined; readonly id: string; readonly sequence: number };
  readonly id?: string | undefined;
  /** It brings a file, as its last field. */
  readonly carriesFile?: boolean | undefined;
  readonly class?: string | undefined;
  readonly children: ComponentChildren;
}

/**
 * A form that makes one entry. It carries a key of its own, so that sending it twice counts once, and shows what was
 * wrong with it the last time above its first field.
 */
export function EntryForm({ viewer, action, trouble, queue, seen, ...rest }: EntryFormProps): VNode {
  return (
    <form
      id={rest.id}
      class={rest.class ?? 'entry'}
      method="post"
      action={action}
      encType={rest.carriesFile === true ? 'multipart/form-data' : undefined}
      data-queue={queue}
      novalidate
    >
      <input type="hidden" name="csrf" value={viewer.csrfToken} />
      <input type="hidden" name="formKey" value={randomUUID()} />
      {seen === undefined ? null : (
        <input type="hidden" name="seen" value={`${seen.kind}:${seen.id}:${seen.sequence}`} />
      )}
      <TroubleSummary trouble={trouble ?? null} formId={rest.id ?? ''} />
      {rest.children}
    </form>
  );
}

/** What is wrong, each with a way to its field. Read out at once. */
function TroubleSummary({ trouble, formId }: { readonly trouble: FormTrouble | null; readonly formId: string }): VNode {
  const wrong = Object.entries(trouble?.fields ?? {});
  return (
    <div class="trouble" data-trouble={formId} role="alert" hidden={trouble === null}>
      {trouble === null ? null : <p>{trouble.sentence}</p>}
      {wrong.length === 0 ? null : (
        <ul>
          {wrong.map(([field, sentence]) => (
            <li key={field}>
              <a href={`#${fieldId(field)}`}>{nameOfField(field)}</a>: {sentence}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

/** The id of a field on the page: where the summary leads to. */
export function fieldId(name: string): string {
  return `field-${name.replaceAll('.', '-')}`;
}

/** What a field is called; one of several of a kind (`count3`, `pieces.2.passed`) as all of them are. */
export function nameOfField(name: string): string {
  const code = nameCodeOf(name);
  const word = say(code);
  return word === code ? name : word;
}

/** Under which code the catalogue holds what a field is called. */
export function nameCodeOf(name: string): string {
  const own = (name.split('.').findLast((part) => !/^\d+$/.test(part)) ?? name).replace(/\d+$/, '');
  return `field-name-${own.replaceAll(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;
}
