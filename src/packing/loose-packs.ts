import { Refusal } from '../platform/refusal.js';

/** @throws {Refusal} `more-loose-than-packed` */
export function refuseMoreLooseThanPacked(loosePackCount: number, packCount: number): void {
  if (loosePackCount > packCount) throw new Refusal('more-loose-than-packed', { loosePackCount, packCount });
}
