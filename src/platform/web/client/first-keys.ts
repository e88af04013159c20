/**
 * Runs before the page is parsed, as no module can: a scan that comes between two pages is kept for the module that reads
 * scans. When that has not come by the time the page is loaded, keys do what they always do.
 */
(() => {
  const keys: FirstKey[] = [];
  const hear = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.altKey || event.metaKey || event.isComposing) return;
    const { key, timeStamp: at, target } = event;
    const isField = target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement;
    const isHeld = key === 'Enter' && keys.length > 0;
    if (isHeld) {
      event.preventDefault();
      event.stopImmediatePropagation();
    }
    keys.push({ key, at, target, value: isField ? target.value : null, isHeld });
  };
  const stop = (): void => {
    removeEventListener('keydown', hear, { capture: true });
    delete window.takeFirstKeys;
  };
  addEventListener('keydown', hear, { capture: true });
  window.takeFirstKeys = () => {
    stop();
    return keys.splice(0);
  };
  addEventListener('load', stop, { once: true });
})();
