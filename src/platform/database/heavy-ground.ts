/** Where a thread of heavy reads reads from. */
export type HeavyGround = { readonly file: string } | { readonly url: string };

/** How a thread of heavy reads works. */
export interface HeavyManner {
  /** The system lets all other threads of the server go before it. */
  readonly isPatient: boolean;
}

/** What such a thread is told when it begins. */
export interface HeavyWork extends HeavyManner {
  readonly ground: HeavyGround;
}

/** A bare connection of such a thread: it can only query. */
export interface HeavyConnection {
  /** Begins a view in which nothing changes; `COMMIT` ends it. */
  readonly begin: string;
  /** @param statement as `plainStatement` writes it */
  rows(statement: string, parameters: readonly unknown[]): readonly unknown[] | Promise<readonly unknown[]>;
}

/** What was met before by its key, the latest last; what was not met for longest is forgotten. */
export class Known<Value> {
  private readonly values = new Map<string, Value>();

  constructor(private readonly mostCount: number) {}

  get(key: string, make: () => Value): Value {
    const value = this.values.get(key) ?? make();
    this.values.delete(key);
    this.values.set(key, value);
    const [oldest] = this.values.keys();
    if (this.values.size > this.mostCount && oldest !== undefined) this.values.delete(oldest);
    return value;
  }
}
