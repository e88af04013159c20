/**
 * Why a block cannot be read:
 * - `too-short`: fewer bytes than the shortest block has;
 * - `unknown-version`: written by a later edition of the format;
 * - `wrong-checksum`: the bytes are not those that were written;
 * - `runs-past-its-end`: the checksum is right, but more is said to follow than there are bytes;
 * - `bytes-left-over`: the checksum is right, but bytes follow that nothing speaks of;
 * - `impossible-value`: the checksum is right, but a value lies outside of its range.
 */
export type DamageReason =
  'too-short' | 'unknown-version' | 'wrong-checksum' | 'runs-past-its-end' | 'bytes-left-over' | 'impossible-value';

/** A block of weights that cannot be read; names the reason. */
export class DamagedWeights extends Error {
  constructor(
    readonly reason: DamageReason,
    what: string,
  ) {
    super(`a block of weights is damaged (${reason}): ${what}`);
    this.name = 'DamagedWeights';
  }
}
