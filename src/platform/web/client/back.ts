/**
 * Escape goes one step back, where the page says what that is. What is being typed is left alone first: the way back
 * only gets the focus, and what was typed stays.
 */
export function listenToEscape(page: Document): void {
  page.addEventListener('keydown', (event) => {
    if (event.key !== 'Escape' || event.defaultPrevented) return;
    const back = page.querySelector<HTMLAnchorElement>('a[data-back]');
    if (isTyping(page.activeElement)) back?.focus();
    else back?.click();
  });
}

function isTyping(element: Element | null): boolean {
  const takesText = element instanceof HTMLInputElement || element instanceof HTMLTextAreaElement;
  return takesText && element.type !== 'radio' && element.type !== 'checkbox' && element.value !== '';
}
