/**
 * Names under which PostgreSQL keeps the plans of statements with a connection. Each costs every connection a plan: so many
 * are given out and no more, and what comes later is planned each time it is asked.
 */
export class PlanNames {
  private readonly names = new Map<string, string>();

  constructor(private readonly mostNames: number) {}

  /** A statement as the driver takes it. */
  of(text: string): { readonly name?: string; readonly text: string } {
    const known = this.names.get(text);
    if (known !== undefined) return { name: known, text };
    if (this.names.size >= this.mostNames) return { text };
    const name = `packthread_${this.names.size + 1}`;
    this.names.set(text, name);
    return { name, text };
  }
}
