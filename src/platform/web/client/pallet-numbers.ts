import { allOn, onShelf } from './store.js';
import { csrfToken } from './who-is-here.js';

/** A pallet's number that the server has set aside for this device. */
interface SetAside {
  readonly sscc: string;
}

/** Fewer than this left: another block is asked for. */
const fewNumbers = 5;
const blockLength = 20;
const lockName = 'packthread-pallet-numbers';

/** Where a page builds pallets, fetches a block of numbers before the last ones are used. */
export async function keepNumbers(): Promise<void> {
  if (document.querySelector('form[data-queue=pallet] input[name=sscc]') === null) return;
  if ((await allOn<SetAside>('ssccs')).length >= fewNumbers) return;
  try {
    const headers = {
      'x-csrf-token': csrfToken(),
      'Idempotency-Key': crypto.randomUUID(),
      'Content-Type': 'application/json',
      Accept: 'application/json',
    };
    const body = JSON.stringify({ numberCount: blockLength });
    const answer = await fetch('/api/sscc-blocks', { method: 'POST', headers, body });
    if (!answer.ok) return;
    const { ssccs } = (await answer.json()) as { readonly ssccs: readonly string[] };
    for (const sscc of ssccs) await onShelf('ssccs', 'readwrite', (store) => store.put({ sscc } satisfies SetAside));
  } catch {
    // Off line: what is left is what there is.
  }
}

/**
 * Gives a pallet's form the next number set aside for this device, where it asks for one: whether the network is there
 * shows only when the form is sent, and the pallet keeps its number.
 */
export async function giveNumber(form: HTMLFormElement): Promise<void> {
  const field = form.querySelector<HTMLInputElement>('input[type=hidden][name=sscc]');
  if (field === null || field.value !== '') return;
  // Two tabs do not take the same number.
  const next = await navigator.locks.request(lockName, async () => {
    const [first] = (await allOn<SetAside>('ssccs')).toSorted((one, other) => (one.sscc < other.sscc ? -1 : 1));
    if (first !== undefined) await onShelf('ssccs', 'readwrite', (store) => store.delete(first.sscc));
    return first?.sscc ?? '';
  });
  field.value = next;
}
