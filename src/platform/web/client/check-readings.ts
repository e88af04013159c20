import { judgeTyped, verdictOf, type TypedReading } from '../../../core/test-packs/judge-typed.js';
import { say } from './words.js';

/**
 * Judges the readings of test packs while they are entered, by the server's own rule: says of each why it passed or
 * failed, asks what was done once one failed, and lets the check be signed when all are there.
 */
export function judgeReadings(form: HTMLFormElement): void {
  const look = (): void => {
    const fields = [...form.querySelectorAll<HTMLInputElement>('input[data-known]')];
    showVerdict(form, verdictOf(fields.map(judgeField)));
  };
  form.addEventListener('input', look);
  // A browser that goes back puts in what was entered, and tells nobody.
  addEventListener('pageshow', look);
  look();
}

function judgeField(field: HTMLInputElement): TypedReading {
  const tick = field.form?.querySelector<HTMLInputElement>(`input[data-shows-nothing="${field.name}"]`);
  const [known, allowed] = [Number(field.dataset['known']), Number(field.dataset['allowed'])];
  const pack = { knownMilligrams: known, allowedMilligrams: allowed };
  const reading = judgeTyped(pack, field.value, tick?.checked ?? false);
  const said = field.form?.querySelector<HTMLElement>(`[data-verdict-of="${field.name}"]`);
  if (said != null) {
    said.textContent = textOf(reading, allowed);
    said.dataset['found'] = reading.found;
  }
  return reading;
}

function textOf(reading: TypedReading, allowedMilligrams: number): string {
  if (reading.found === 'missing') return '';
  if (reading.why !== 'reading') return say(`browser-reading-${reading.why}`);
  const off = reading.offMilligrams / 1000;
  const facts = { off: off > 0 ? `+${off}` : String(off).replace('-', '\u2212'), allowed: allowedMilligrams / 1000 };
  return say(`browser-reading-${reading.found}`, facts);
}

function showVerdict(form: HTMLFormElement, verdict: 'passed' | 'failed' | null): void {
  const word = verdict ?? 'open';
  const signedAs = form.querySelector<HTMLInputElement>('input[name=signedAs]');
  if (signedAs !== null) signedAs.value = verdict ?? '';
  for (const part of form.querySelectorAll<HTMLElement>('[data-if-failed]')) part.hidden = verdict !== 'failed';
  const said = form.querySelector<HTMLElement>('[data-check-verdict]');
  if (said !== null) {
    if (said.textContent !== say(`browser-check-${word}`)) said.textContent = say(`browser-check-${word}`);
    said.dataset['found'] = word;
  }
  const button = form.querySelector<HTMLButtonElement>('button[type=submit]');
  if (button === null) return;
  button.disabled = verdict === null;
  button.textContent = say(`browser-sign-${word}`);
}
