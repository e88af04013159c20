import { BadForm } from '../platform/refusal.js';

/** A unit as it was scanned. */
export interface AskedUnit {
  readonly kind: 'pallet' | 'bulk-bag';
  readonly text: string;
}

/** A pallet or a bag: exactly one of the two. */
export function oneUnit(form: { readonly pallet?: string | null; readonly bag?: string | null }): AskedUnit {
  const { pallet = null, bag = null } = form;
  if (pallet !== null && bag === null) return { kind: 'pallet', text: pallet };
  if (bag !== null && pallet === null) return { kind: 'bulk-bag', text: bag };
  throw new BadForm([{ field: 'pallet', code: 'pallet-or-bag', facts: {} }]);
}
