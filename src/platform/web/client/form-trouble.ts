import type { Problem } from './send-entry.js';

/** Shows at the form why the server did not take it; what was typed stays. The same places as without script. */
export function showTrouble(form: HTMLFormElement, { detail, fields = [] }: Problem): void {
  for (const { field, detail: wrong } of fields) markField(form, field, wrong);
  const summary = form.querySelector<HTMLElement>('[data-trouble]');
  if (summary === null) return;
  const sentence = document.createElement('p');
  sentence.textContent = detail;
  const list = document.createElement('ul');
  list.append(...fields.map(({ field, detail: wrong }) => lineOf(form, field, wrong)));
  summary.replaceChildren(sentence, ...(fields.length === 0 ? [] : [list]));
  summary.hidden = false;
  summary.tabIndex = -1;
  summary.focus();
}

export function clearTrouble(form: HTMLFormElement): void {
  const summary = form.querySelector<HTMLElement>('[data-trouble]');
  if (summary !== null) {
    summary.hidden = true;
    summary.replaceChildren();
  }
  for (const place of form.querySelectorAll<HTMLElement>('[data-field]')) {
    const wrong = place.querySelector<HTMLElement>(':scope > .wrong');
    if (wrong !== null) wrong.hidden = true;
    const input = place.querySelector('[aria-invalid]');
    input?.removeAttribute('aria-invalid');
    input?.removeAttribute('aria-describedby');
  }
}

function placeOf(form: HTMLFormElement, field: string): HTMLElement | null {
  return form.querySelector<HTMLElement>(`[data-field="${CSS.escape(field)}"]`);
}

function markField(form: HTMLFormElement, field: string, wrong: string): void {
  const place = placeOf(form, field);
  const says = place?.querySelector<HTMLElement>(':scope > .wrong');
  if (place === null || says === null || says === undefined) return;
  says.textContent = wrong;
  says.hidden = false;
  const input = place.querySelector('input, select, textarea');
  input?.setAttribute('aria-invalid', 'true');
  input?.setAttribute('aria-describedby', says.id);
}

function lineOf(form: HTMLFormElement, field: string, wrong: string): HTMLLIElement {
  const line = document.createElement('li');
  const place = placeOf(form, field);
  const input = place?.matches('fieldset') === true ? place : place?.querySelector('input, select, textarea');
  const name = (place?.querySelector('label, legend')?.firstChild?.textContent ?? field).trim();
  if (input?.id === undefined || input.id === '') {
    line.textContent = `${name}: ${wrong}`;
    return line;
  }
  const link = document.createElement('a');
  link.href = `#${input.id}`;
  link.textContent = name;
  line.append(link, `: ${wrong}`);
  return line;
}
