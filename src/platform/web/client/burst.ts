/** A key as the page saw it. */
export interface Key {
  /** One character, or a name such as `Enter`. */
  readonly key: string;
  /** When it was pressed, in milliseconds. */
  readonly at: number;
}

/** A scanner's keys come 7 to 16 milliseconds apart; nobody types six keys that fast. */
const meanGapMilliseconds = 30;
/** One key may be late, when the page was busy. */
const mostGapMilliseconds = 80;
const leastCharacters = 6;

/** What this scanner sends around a code, as set up on this device. */
export interface ScannerHabit {
  readonly prefix: string;
  /** The key that ends a scan. */
  readonly suffix: string;
}

/** Tells a scan from typing by the gaps between the keys. */
export class Burst {
  private keys: Key[] = [];

  constructor(private readonly habit: ScannerHabit) {}

  /** Whether the next key would begin anew: what stands in the field is then what a person typed. */
  isNewAt(at: number): boolean {
    const last = this.keys.at(-1);
    return last === undefined || at - last.at > mostGapMilliseconds;
  }

  /** Takes a key. Answers the code when the key ends a scan. */
  take(key: Key): string | null {
    if (this.isNewAt(key.at)) this.keys = [];
    if (key.key === this.habit.suffix) return this.end(key.at);
    // A person goes on to the next field: what was typed before is no scan, however fast it was.
    if (key.key === 'Tab') this.keys = [];
    if ([...key.key].length === 1) this.keys.push(key);
    return null;
  }

  private end(at: number): string | null {
    const { keys } = this;
    this.keys = [];
    const first = keys[0];
    if (first === undefined || keys.length < leastCharacters) return null;
    if ((at - first.at) / keys.length > meanGapMilliseconds) return null;
    const text = keys.map(({ key }) => key).join('');
    const { prefix } = this.habit;
    return prefix !== '' && text.startsWith(prefix) ? text.slice(prefix.length) : text;
  }
}

/** The same code again within five seconds is the same pull of the trigger, or a hand that slipped. */
const sameCodeMilliseconds = 5000;

/** Lets a code through unless it was just scanned. */
export class JustScanned {
  private last: { readonly code: string; readonly at: number } | null = null;

  isAgain(code: string, at: number): boolean {
    const again = this.last?.code === code && at - this.last.at < sameCodeMilliseconds;
    if (!again) this.last = { code, at };
    return again;
  }
}
