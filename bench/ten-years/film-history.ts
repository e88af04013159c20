import { FilmLot } from '../../src/packing/film-lot.entity.js';
import type { Minute } from '../../src/demo/life/minutes.js';
import type { Numbers } from './numbers.js';
import type { RowSink } from './row-sink.js';

const lotMinutes = 3 * 1440;

/** A lot of film for three days, many reels of it. */
export class FilmHistory {
  private until = 0;
  private id = '';

  constructor(
    private readonly sink: RowSink,
    private readonly numbers: Numbers,
    private readonly siteId: string,
  ) {}

  lotAt(at: Minute): string {
    if (at < this.until) return this.id;
    this.until = at + lotMinutes;
    this.id = this.numbers.id(at * 60_000);
    const code = `F${this.numbers.take('film')}`;
    this.sink.put(FilmLot, {
      ...{ id: this.id, siteId: this.siteId, code, supplierCode: 'SF', kind: 'film', voidedBy: null },
    });
    return this.id;
  }
}
