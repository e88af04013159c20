/** Writes numbers of any width one after the other, the highest bit first. */
export class BitWriter {
  private bytes = new Uint8Array(1024);
  private length = 0;
  /** The word that is being filled, from its highest bit down. */
  private word = 0;
  /** How many bits of it are free, 1 to 32. */
  private free = 32;

  /**
   * @param value whole, 0 to 2^bits − 1; as a signed 32-bit number where it has 32 bits
   * @param bits 1 to 32
   */
  put(value: number, bits: number): void {
    const free = this.free;
    if (bits < free) {
      this.word |= value << (free - bits);
      this.free = free - bits;
      return;
    }
    const rest = bits - free;
    this.flush(this.word | (value >>> rest));
    this.word = rest === 0 ? 0 : value << (32 - rest);
    this.free = 32 - rest;
  }

  /**
   * A whole number in groups of seven bits, the lowest group first.
   *
   * @param value 0 to 2^53 − 1
   * @throws RangeError outside of that range, or when it is not whole
   */
  putNumber(value: number): void {
    if (!Number.isSafeInteger(value) || value < 0) throw new RangeError(`not a whole number from 0 to 2^53: ${value}`);
    let rest = value;
    for (; rest >= 128; rest = Math.floor(rest / 128)) this.put(128 + (rest % 128), 8);
    this.put(rest, 8);
  }

  /** A whole number that may be negative: −1 is written as 1, 1 as 2, −2 as 3. */
  putSigned(value: number): void {
    this.putNumber(value < 0 ? -2 * value - 1 : 2 * value);
  }

  /** All that was written, filled up with zero bits to whole bytes, and room for `after` further bytes. */
  end(after: number): Uint8Array {
    const length = this.length + Math.ceil((32 - this.free) / 8);
    this.flush(this.word);
    const whole = new Uint8Array(length + after);
    whole.set(this.bytes.subarray(0, length));
    return whole;
  }

  private flush(word: number): void {
    if (this.length + 4 > this.bytes.length) {
      const wider = new Uint8Array(this.bytes.length * 2);
      wider.set(this.bytes);
      this.bytes = wider;
    }
    const { bytes, length } = this;
    bytes[length] = word >>> 24;
    bytes[length + 1] = word >>> 16;
    bytes[length + 2] = word >>> 8;
    bytes[length + 3] = word;
    this.length = length + 4;
  }
}
