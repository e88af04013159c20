/** Keys that came as one. */
export interface HeardScan {
  readonly text: string;
  /** The key that ended it; null where none did. */
  readonly end: string | null;
  readonly meanGap: number;
}

const pauseMilliseconds = 400;

/** Hears whatever comes from the keyboard in one go, for the self-test: slower scanners too, and those without an end. */
export function listenToKeys(hear: (scan: HeardScan) => void): void {
  let keys: { readonly key: string; readonly at: number }[] = [];
  let waiting: ReturnType<typeof setTimeout> | undefined;
  const end = (key: string | null): void => {
    clearTimeout(waiting);
    const [first, last] = [keys[0], keys.at(-1)];
    const text = keys.map((one) => one.key).join('');
    keys = [];
    if (first === undefined || last === undefined || text.length < 10) return;
    hear({ text, end: key, meanGap: (last.at - first.at) / Math.max(1, text.length - 1) });
  };
  document.addEventListener(
    'keydown',
    (event) => {
      if (event.key === 'Enter' || event.key === 'Tab') {
        if (keys.length >= 10) event.preventDefault();
        end(event.key);
        return;
      }
      if ([...event.key].length !== 1) return;
      keys.push({ key: event.key, at: event.timeStamp });
      clearTimeout(waiting);
      waiting = setTimeout(end, pauseMilliseconds, null);
    },
    { capture: true },
  );
}
