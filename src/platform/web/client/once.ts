/** A double click sends a form once: what follows the first sending is stopped until the page is shown again. */
export function sendOnce(page: Document): void {
  const sent = new WeakSet<HTMLFormElement>();
  page.addEventListener('submit', (event) => {
    const form = event.target;
    if (!(form instanceof HTMLFormElement) || form.method !== 'post' || event.defaultPrevented) return;
    // What may wait on the device has a key in its queue and its own way of being sent once.
    if (form.dataset['queue'] !== undefined && form.dataset['native'] === undefined) return;
    if (sent.has(form)) event.preventDefault();
    else setSent(sent, form);
  });
  // Back from the next page: the form as it was may be sent again, with the same key, which counts once.
  page.defaultView?.addEventListener('pageshow', () => {
    for (const form of page.forms) {
      sent.delete(form);
      form.removeAttribute('aria-busy');
    }
  });
}

function setSent(sent: WeakSet<HTMLFormElement>, form: HTMLFormElement): void {
  sent.add(form);
  form.setAttribute('aria-busy', 'true');
}
