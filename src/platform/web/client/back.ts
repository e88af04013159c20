/** Escape goes one step back, where the page says what that is. What is being typed is left alone first. */
export function listenToEscape(page: Document): void {
  page.addEventListener('keydown', (event) => {
    if (event.key !== 'Escape' || event.defaultPrevented) return;
    const { activeElement } = page;
    const isTyping = activeElement instanceof HTMLInputElement && activeElement.value !== '';
    if (isTyping) activeElement.blur();
    else page.querySelector<HTMLAnchorElement>('a[data-back]')?.click();
  });
}
