/** Numbers of so many decimal places as whole numbers: what doubles are compared with. Only for tests. */
export const decimalPlacesKept = 120;
const one = 10n ** BigInt(decimalPlacesKept);

/** π to so many decimal places, as a whole number: Machin's formula, π/4 = 4·arctan(1/5) − arctan(1/239) (from memory). */
export function piScaled(places: number): bigint {
  const guard = 20n;
  const unit = 10n ** (BigInt(places) + guard);
  return (4n * (4n * arctanOfInverse(5n, unit) - arctanOfInverse(239n, unit))) / 10n ** guard;
}

/** The double nearest to a whole number over another, when both are large: to about 17 digits. */
export function ratioOf(numerator: bigint, denominator: bigint): number {
  if (numerator === 0n) return 0;
  const [top, bottom] = [numerator < 0n ? -numerator : numerator, denominator < 0n ? -denominator : denominator];
  const shift = BigInt(bottom.toString().length - top.toString().length + 25);
  const scaled = shift >= 0n ? (top * 10n ** shift) / bottom : top / (bottom * 10n ** -shift);
  const size = Number(`${scaled}e${-shift}`);
  return numerator < 0n === denominator < 0n ? size : -size;
}

/** A double as a whole number of 10⁻¹²⁰, exactly as far as it has no more than 120 decimal places. */
export function exactly(double: number): bigint {
  const bits = new DataView(new ArrayBuffer(8));
  bits.setFloat64(0, double);
  const raw = bits.getBigUint64(0);
  const exponent = Number((raw >> 52n) & 0x7ffn);
  const fraction = (raw & 0xfffffffffffffn) | (exponent === 0 ? 0n : 1n << 52n);
  const power = BigInt(Math.max(exponent, 1) - 1075);
  const size = power >= 0n ? (fraction << power) * one : (fraction * one) >> -power;
  return double < 0 ? -size : size;
}

/**
 * The share of the standard normal distribution above a double, by the series about 0: ½ − Σ(−1)ᵏ x²ᵏ⁺¹/(2ᵏ k! (2k + 1)) /
 * √(2π). Its terms grow before they shrink; 120 places leave enough up to a distance of 12.
 */
export function normalShareAbove(x: number): number {
  const scaled = exactly(x);
  const square = (scaled * scaled) / one;
  let power = scaled;
  let sum = 0n;
  for (let k = 0n; power !== 0n; k += 1n) {
    sum += power / (2n * k + 1n);
    power = -(power * square) / (2n * (k + 1n) * one);
  }
  const root = squareRoot(2n * piScaled(decimalPlacesKept) * one);
  return ratioOf(one / 2n - (sum * one) / root, one);
}

/** The root of a whole number, rounded down, after Newton. */
export function squareRoot(value: bigint): bigint {
  let root = 10n ** BigInt(Math.ceil(value.toString().length / 2));
  for (;;) {
    const next = (root + value / root) / 2n;
    if (next >= root) return root;
    root = next;
  }
}

function arctanOfInverse(inverse: bigint, unit: bigint): bigint {
  let power = unit / inverse;
  let sum = 0n;
  for (let odd = 1n; power !== 0n; odd += 2n) {
    sum += odd % 4n === 1n ? power / odd : -(power / odd);
    power /= inverse * inverse;
  }
  return sum;
}
