import type { Act, Doer, TimedAct } from './act.js';
import { instantOf, type Minute } from './minutes.js';

/** What is recorded, when and by whom, in the order of recording. */
export class Diary {
  private readonly pages: { readonly minute: Minute; readonly by: Doer; readonly act: Act }[] = [];

  note(minute: Minute, by: Doer, act: Act): void {
    this.pages.push({ minute, by, act });
  }

  /** Acts of one minute come a second apart, in the order in which they were noted. */
  acts(): readonly TimedAct[] {
    const sorted = [...this.pages].sort((one, other) => one.minute - other.minute);
    let last = { minute: -1, second: 0 };
    return sorted.map(({ minute, by, act }) => {
      last = { minute, second: last.minute === minute ? Math.min(59, last.second + 1) : 1 };
      return { at: instantOf(minute, last.second), by, act };
    });
  }
}
