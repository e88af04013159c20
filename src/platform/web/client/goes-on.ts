/**
 * Fields that are filled one after the other (`data-goes-on`), by a scale that types or by hand: Enter goes on to the next
 * one that is empty, and from the last to the button, or to what is asked where a reading failed. A form that is not complete is never sent by a scale's Enter.
 */
export function goOnByEnter(page: Document): void {
  page.addEventListener('keydown', (event) => {
    const { target, key } = event;
    if (key !== 'Enter' || event.defaultPrevented || !isOfRow(target)) return;
    event.preventDefault();
    if (target.value.trim() === '') return;
    const fields = [...(target.form?.querySelectorAll<HTMLInputElement>('[data-goes-on]') ?? [])];
    const later = fields.slice(fields.indexOf(target) + 1);
    const next = [...later, ...fields].find((field) => field.value.trim() === '');
    const asked = target.form?.querySelector<HTMLElement>('[data-if-failed]:not([hidden]) input');
    (next ?? asked ?? target.form?.querySelector<HTMLElement>('button[type=submit], button:not([type])'))?.focus();
  });
}

function isOfRow(target: EventTarget | null): target is HTMLInputElement {
  return target instanceof HTMLInputElement && target.dataset['goesOn'] !== undefined;
}
