import { say } from './words.js';

/** Fields for numbers (`data-number`) get keys of a glove's size below them, and steps where the page names one. */
export function offerNumberPads(): void {
  if (!matchMedia('(pointer: coarse)').matches) return;
  document.addEventListener('focusin', ({ target }) => {
    if (isNumberField(target)) openPad(target);
    else setTimeout(closeLeftPad, pressMilliseconds);
  });
  // A field that has the focus already, from the page's beginning or after *done*, is not focused by a finger again.
  document.addEventListener('click', ({ target }) => {
    if (isNumberField(target)) openPad(target);
  });
  if (isNumberField(document.activeElement)) openPad(document.activeElement);
}

function isNumberField(target: EventTarget | null): target is HTMLInputElement {
  return target instanceof HTMLInputElement && target.dataset['number'] !== undefined;
}

let open: { readonly pad: HTMLElement; readonly field: HTMLInputElement; readonly inputMode: string } | null = null;

/** Keys that go while a finger is down let the button below them slip away from under it: the press would be lost. */
const pressMilliseconds = 300;

function closeLeftPad(): void {
  const at = document.activeElement;
  if (open === null || at === open.field || at?.closest('.number-pad') != null) return;
  closePad();
  keepInSight(at);
}

/** What stood below the keys moves up by their height when they go: it must not slip out of the window. */
function keepInSight(at: Element | null): void {
  if (at !== null && !at.matches('body, main')) at.scrollIntoView({ block: 'nearest' });
}

function openPad(field: HTMLInputElement): void {
  if (open?.field === field) return;
  closePad();
  const pad = padFor(field);
  open = { pad, field, inputMode: field.inputMode };
  // The device's own keyboard would lie over the page.
  field.inputMode = 'none';
  (field.closest('.with-unit') ?? field).after(pad);
  keepInSight(field);
}

function closePad(): void {
  if (open === null) return;
  open.field.inputMode = open.inputMode;
  open.pad.remove();
  open = null;
}

function padFor(field: HTMLInputElement): HTMLElement {
  const pad = document.createElement('div');
  pad.className = 'number-pad';
  pad.setAttribute('role', 'group');
  pad.setAttribute('aria-label', say('browser-number-pad'));
  const point = document.documentElement.lang === 'es' ? ',' : '.';
  for (const key of ['7', '8', '9', '4', '5', '6', '1', '2', '3', point, '0']) {
    pad.append(
      keyOf(key, key, () => {
        type(field, key);
      }),
    );
  }
  pad.append(
    keyOf('⌫', say('browser-rub-out'), () => {
      rubOut(field);
    }),
  );
  const step = Number(field.dataset['number'] ?? '');
  if (step > 0) {
    for (const [sign, word] of [
      [-1, 'browser-less'],
      [1, 'browser-more'],
    ] as const) {
      pad.append(
        keyOf(`${sign < 0 ? '−' : '+'}${field.dataset['number'] ?? ''}`, say(word, { step }), () => {
          addStep(field, sign * step);
        }),
      );
    }
  }
  const done = keyOf(say('browser-number-done'), say('browser-number-done'), () => {
    closePad();
    nextOf(field)?.focus();
  });
  done.classList.add('done');
  pad.append(done);
  return pad;
}

function keyOf(shows: string, says: string, act: () => void): HTMLButtonElement {
  const key = document.createElement('button');
  key.type = 'button';
  key.textContent = shows;
  if (says !== shows) key.setAttribute('aria-label', says);
  key.addEventListener('click', act);
  return key;
}

function change(field: HTMLInputElement, value: string): void {
  if (field.maxLength > 0 && value.length > field.maxLength) return;
  field.value = value;
  field.dispatchEvent(new Event('input', { bubbles: true }));
}

function type(field: HTMLInputElement, key: string): void {
  if (/\d/.test(key) || !/[.,]/.test(field.value)) change(field, field.value + key);
}

function rubOut(field: HTMLInputElement): void {
  change(field, field.value.slice(0, -1));
}

/** Steps go in whole thousandths, so that 0.1 three times is 0.3. */
function addStep(field: HTMLInputElement, step: number): void {
  const now = Number(field.value.replaceAll(/[\s\u202f]/g, '').replace(',', '.'));
  if (Number.isNaN(now)) return;
  const sum = Math.max(0, Math.round((now + step) * 1000) / 1000);
  change(field, String(sum));
}

function nextOf(field: HTMLInputElement): HTMLElement | null {
  const stops = [
    ...(field.form?.querySelectorAll<HTMLElement>('input:not([type=hidden]), select, textarea, button') ?? []),
  ];
  return stops[stops.indexOf(field) + 1] ?? null;
}
