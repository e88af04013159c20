import { Refusal } from '../platform/refusal.js';
import type { BagTypeForm } from './bag-type.form.js';

/** @throws {Refusal} `tare-band-crossed`, `tare-above-safe-load` */
export function refuseBagType(form: BagTypeForm): void {
  const { leastTareGrams: least, usualTareGrams: usual, mostTareGrams: most, safeLoadGrams } = form;
  if (least > usual || usual > most) throw new Refusal('tare-band-crossed', { least, usual, most });
  if (most >= safeLoadGrams) throw new Refusal('tare-above-safe-load', { most, safeLoadGrams });
}

export function bagTypeColumns(form: BagTypeForm) {
  const { code, name, usualTareGrams, leastTareGrams, mostTareGrams, safeLoadGrams } = form;
  return { code, name, usualTareGrams, leastTareGrams, mostTareGrams, safeLoadGrams };
}
