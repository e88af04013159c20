/** Where a thread of heavy reads reads from. */
export type HeavyGround = { readonly file: string } | { readonly url: string };

/** What a thread of heavy reads is told when it begins. */
export interface HeavyWork {
  readonly ground: HeavyGround;
  /** The system lets all other threads of the server go before it. */
  readonly isPatient: boolean;
  /** The shared number of `WaitedFor`. */
  readonly waitedFor: Int32Array<SharedArrayBuffer>;
}

/** A bare connection of such a thread: it can only query. */
export interface HeavyConnection {
  /** Begins a view in which nothing changes; `COMMIT` ends it. */
  readonly begin: string;
  /** @param statement as `plainStatement` writes it */
  rows(statement: string, parameters: readonly unknown[]): readonly unknown[] | Promise<readonly unknown[]>;
}

interface Met<Value> {
  readonly value: Value;
  lastMet: number;
}

/** What was met before by its key; when there are too many, the half that was not met for longest is forgotten. */
export class Known<Value> {
  private readonly values = new Map<string, Met<Value>>();
  private metCount = 0;

  constructor(private readonly mostCount: number) {}

  get(key: string, make: () => Value): Value {
    this.metCount += 1;
    const known = this.values.get(key);
    if (known !== undefined) {
      known.lastMet = this.metCount;
      return known.value;
    }
    if (this.values.size >= this.mostCount) this.forgetHalf();
    const value = make();
    this.values.set(key, { value, lastMet: this.metCount });
    return value;
  }

  private forgetHalf(): void {
    const byTime = [...this.values].sort(([, one], [, other]) => one.lastMet - other.lastMet);
    for (const [key] of byTime.slice(0, Math.ceil(byTime.length / 2))) this.values.delete(key);
  }
}
