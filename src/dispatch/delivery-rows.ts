import type { Instant } from '../platform/clock.js';

/** `closed`: the papers are printed, the vehicle is still here. */
export const deliveryStatuses = ['planned', 'loading', 'closed', 'left', 'cancelled'] as const;
export type DeliveryStatus = (typeof deliveryStatuses)[number];

/** A delivery with how far it is, and the number of its good note. */
export interface DeliveryRow {
  readonly id: string;
  readonly siteId: string;
  readonly customerId: string;
  readonly customerCode: string;
  /** Null once it was removed. */
  readonly customerName: string | null;
  readonly orderNumber: string;
  readonly plannedOn: string;
  /** When the vehicle is to leave; null: some time that day. */
  readonly leavesAt: Instant | null;
  readonly status: DeliveryStatus;
  /** Units on the vehicle. */
  readonly loadedCount: number;
  /** Null until it is closed, and after its note was made void. */
  readonly noteNumber: string | null;
  readonly notePaperId: string | null;
  readonly closedAt: Instant | null;
  /** Null until it went through the gate. */
  readonly leftAt: Instant | null;
}

/** An order line with what of it is on the vehicle. Packs of a format, or whole bags of a grade. */
export interface LineRow {
  readonly id: string;
  readonly lineNumber: number;
  readonly formatId: string | null;
  readonly gradeId: string | null;
  /** Name of the format or the grade. */
  readonly name: string;
  readonly code: string;
  readonly orderedCount: number;
}

/** A line as the pages show it. */
export interface LineProgress extends LineRow {
  readonly loadedCount: number;
  readonly leftCount: number;
}

/** A unit on a vehicle, or that was on it when the delivery was closed. */
export interface LoadedRow {
  readonly loadingId: string;
  readonly deliveryId: string;
  readonly palletId: string | null;
  readonly bagId: string | null;
  readonly place: number;
  readonly loadedAt: Instant;
}

/** A check of the vehicle. */
export interface VehicleCheckRow {
  readonly id: string;
  readonly registration: string;
  readonly haulierCode: string;
  readonly answers: readonly { readonly point: string; readonly isFine: boolean }[];
  readonly passed: boolean;
  readonly checkedAt: Instant;
}

/** A delivery note that was given out, the void ones too. */
export interface NoteRow {
  readonly paperId: string;
  readonly number: string;
  readonly version: number;
  readonly issuedAt: Instant;
  readonly isVoid: boolean;
  /** Why it was made void. */
  readonly voidReason: string | null;
}
