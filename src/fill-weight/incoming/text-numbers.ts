/** Lines name few runs and lines over and over: each text gets a number, counted from 1. */
export class TextNumbers {
  private readonly numbers = new Map<string, number>();
  private readonly texts: string[] = [];
  /** The bytes of the last text: most lines repeat it. */
  private lastBytes = new Uint8Array(0);
  private lastNumber = 0;

  constructor(private readonly most: number) {}

  /** How long the text is that came last. */
  get lastLength(): number {
    return this.lastBytes.length;
  }

  /** The number of the text that came last, where it stands here too; else 0. */
  ofLast(bytes: Uint8Array, start: number): number {
    const { lastBytes } = this;
    for (let place = 0; place < lastBytes.length; place += 1) {
      if (lastBytes[place] !== bytes[start + place]) return 0;
    }
    return this.lastNumber;
  }

  /** The number of a text that is plain ASCII; 0 where there are too many. */
  ofBytes(bytes: Uint8Array, start: number, end: number): number {
    const { lastBytes } = this;
    if (lastBytes.length === end - start) {
      let place = 0;
      while (place < lastBytes.length && lastBytes[place] === bytes[start + place]) place += 1;
      if (place === lastBytes.length && this.lastNumber > 0) return this.lastNumber;
    }
    this.lastBytes = bytes.slice(start, end);
    this.lastNumber = this.ofText(String.fromCharCode(...this.lastBytes));
    return this.lastNumber;
  }

  ofText(text: string): number {
    const known = this.numbers.get(text);
    if (known !== undefined) return known;
    if (this.texts.length >= this.most) return 0;
    this.texts.push(text);
    this.numbers.set(text, this.texts.length);
    return this.texts.length;
  }

  /** All texts; the one with number n stands at n − 1. */
  all(): readonly string[] {
    return this.texts;
  }
}
