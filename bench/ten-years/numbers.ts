import { makeDocumentNumber } from '../../src/core/identifiers/document-number.js';
import { makeSscc } from '../../src/core/identifiers/sscc.js';

const companyPrefix = '9520123';

/** Ids and numbers of history, each later than the one before, and how far each series has come. */
export class Numbers {
  private readonly next = new Map<string, number>();
  private idCount = 0;

  /** An id of the house's form (version 7, ordered by time), made without drawing anything by chance. */
  id(milliseconds: number): string {
    this.idCount += 1;
    const time = Math.floor(milliseconds).toString(16).padStart(12, '0');
    const count = this.idCount.toString(16).padStart(15, '0');
    return `${time.slice(0, 8)}-${time.slice(8)}-7${count.slice(0, 3)}-8${count.slice(3, 6)}-000${count.slice(6)}`;
  }

  take(series: string): number {
    const number = this.next.get(series) ?? 1;
    this.next.set(series, number + 1);
    return number;
  }

  sscc(): string {
    return makeSscc({ companyPrefix, extensionDigit: 0, serial: this.take('sscc') });
  }

  document(kind: string, prefix: string, year: number): string {
    return makeDocumentNumber({ prefix, year, serial: this.take(`${kind}-${year}`) });
  }

  /** Each series with the number that comes next. */
  series(): readonly (readonly [string, number])[] {
    return [...this.next];
  }
}
