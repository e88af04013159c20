import type { Language } from '../platform/sentences/language.js';

/** What a delivery note says, frozen when the delivery was closed. Times are local text already: a paper never moves. */
export interface DeliveryNoteFacts {
  /** That of the customer when it was issued; absent on notes from before papers had a language: English. */
  readonly language?: Language;
  readonly number: string;
  /** 1, and one more for each note that this one stands in the place of. */
  readonly version: number;
  /** The void note before it; null for the first. */
  readonly replaces: string | null;
  readonly sender: { readonly name: string; readonly gln: string };
  readonly customer: {
    readonly code: string;
    readonly gln: string | null;
    readonly name: string | null;
    readonly address: string | null;
  };
  readonly orderNumber: string;
  readonly plannedOn: string;
  readonly leftAtLocal: string;
  readonly vehicle: { readonly registration: string; readonly haulierCode: string; readonly checkedAtLocal: string };
  readonly seal: string;
  readonly products: readonly NoteProduct[];
  readonly bagGroups: readonly NoteBagGroup[];
  readonly totals: NoteTotals;
  /** Lines of which less is on than was ordered. */
  readonly short: readonly { readonly name: string; readonly ordered: number; readonly loaded: number }[];
  /** Code of the fixed reason, said when the note is made; absent on notes from before there were such. */
  readonly shortCode?: string | null;
  readonly shortReason: string | null;
  readonly remarks: string | null;
}

/** Packs of one format, by lot. */
export interface NoteProduct {
  readonly name: string;
  /** 14 digits. */
  readonly gtin: string;
  readonly nominalGrams: number;
  readonly lots: readonly NoteLot[];
}

export interface NoteLot {
  readonly code: string;
  readonly bestBeforeOn: string | null;
  readonly packCount: number;
  /** Count times nominal quantity: what is declared. */
  readonly netGrams: number;
  readonly pallets: readonly NotePallet[];
}

/** The packs of one lot on one pallet. */
export interface NotePallet {
  readonly sscc: string;
  readonly packCount: number;
  readonly netGrams: number;
  /** Of the whole pallet, computed; null where it stands with another lot of the same pallet above. */
  readonly grossGrams: number | null;
}

/** Whole bags of one grade, sold by weight. */
export interface NoteBagGroup {
  readonly grade: string;
  readonly netGrams: number;
  readonly bags: readonly NoteBag[];
}

export interface NoteBag {
  readonly number: string;
  readonly sscc: string;
  readonly netGrams: number;
  readonly grossGrams: number;
  readonly tareGrams: number;
  /** The tare was not weighed but taken from the bag's type. */
  readonly isPresetTare: boolean;
  readonly scaleCode: string;
}

export interface NoteTotals {
  readonly palletCount: number;
  readonly bagCount: number;
  readonly packCount: number;
  readonly netGrams: number;
  readonly grossGrams: number;
}
