import type { FieldProblem } from '../../platform/refusal.js';
import type { LineFault } from './sent-weight.js';

/** An answer names this many lines in error and counts the rest. */
const mostNamed = 100;

/** The lines of a batch that cannot be taken, in the order in which they were found. */
export class LineFaults {
  count = 0;
  private readonly named: (LineFault & { readonly line: number })[] = [];

  add(line: number, wrong: LineFault): void {
    this.count += 1;
    if (this.named.length < mostNamed) this.named.push({ line, ...wrong });
  }

  /** Forgets what was found after so many. */
  forgetAfter(count: number): void {
    this.count = Math.min(this.count, count);
    this.named.length = Math.min(this.named.length, count);
  }

  /** The first ones, by their line. */
  problems(): FieldProblem[] {
    return [...this.named].sort((one, other) => one.line - other.line);
  }
}
