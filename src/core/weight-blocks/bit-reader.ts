import { DamagedWeights } from './damaged-weights.js';

/** So many bytes beyond the end may be looked at before the end is noticed. */
const margin = 16;

/** Reads what a `BitWriter` wrote, and never beyond its end. */
export class BitReader {
  private readonly bytes: Uint8Array;
  private readonly endsAt: number;
  /** In bits from the start. */
  private place = 0;

  constructor(bytes: Uint8Array) {
    this.bytes = new Uint8Array(bytes.length + margin);
    this.bytes.set(bytes);
    this.endsAt = bytes.length * 8;
  }

  /** The next 32 bits as a signed number, zeros beyond the end; they are not taken. */
  look(): number {
    const { bytes, place } = this;
    const at = place >>> 3;
    const shift = place & 7;
    const word =
      ((bytes[at] ?? 0) << 24) | ((bytes[at + 1] ?? 0) << 16) | ((bytes[at + 2] ?? 0) << 8) | (bytes[at + 3] ?? 0);
    return shift === 0 ? word : (word << shift) | ((bytes[at + 4] ?? 0) >>> (8 - shift));
  }

  /**
   * Takes so many bits.
   *
   * @throws DamagedWeights `runs-past-its-end`
   */
  skip(bits: number): void {
    this.place += bits;
    if (this.place > this.endsAt) throw new DamagedWeights('runs-past-its-end', 'more is said to follow than there is');
  }

  /**
   * @param bits 1 to 32
   * @returns 0 to 2^bits − 1
   * @throws DamagedWeights `runs-past-its-end`
   */
  take(bits: number): number {
    const value = this.look() >>> (32 - bits);
    this.skip(bits);
    return value;
  }

  /** @throws DamagedWeights `runs-past-its-end`, `impossible-value` beyond 2^53 */
  takeNumber(): number {
    let value = 0;
    for (let unit = 1; unit < 2 ** 53; unit *= 128) {
      const group = this.take(8);
      value += (group % 128) * unit;
      if (group >= 128) continue;
      if (Number.isSafeInteger(value)) return value;
      break;
    }
    throw new DamagedWeights('impossible-value', 'a number beyond 2^53');
  }

  takeSigned(): number {
    const value = this.takeNumber();
    return value % 2 === 1 ? -(value + 1) / 2 : value / 2;
  }

  /** @throws DamagedWeights `bytes-left-over` when anything but the zero bits of the last byte is left */
  end(): void {
    const left = this.endsAt - this.place;
    if (left >= 8 || (left > 0 && this.take(left) !== 0)) {
      throw new DamagedWeights('bytes-left-over', `${left} bits follow the last weight`);
    }
  }
}
