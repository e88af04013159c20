import type { Random } from '../../src/demo/plant-physics/random.js';
import type { FilmHistory } from './film-history.js';
import type { Numbers } from './numbers.js';
import type { RowSink } from './row-sink.js';

/** The plant of this bench by its ids: set up by the house's own commands. */
export interface BenchPlant {
  readonly siteId: string;
  readonly gradeId: string;
  readonly formatId: string;
  readonly packsPerPallet: number;
  readonly dryers: readonly string[];
  readonly hoppers: readonly BenchHopper[];
  readonly bagScaleId: string;
  readonly platformScaleId: string;
  readonly benchScaleId: string;
  readonly placeId: string;
  readonly customers: readonly string[];
}

/** A hopper with the one line that it feeds. */
export interface BenchHopper {
  readonly hopperId: string;
  readonly lineId: string;
  readonly lineCode: string;
  readonly coderId: string;
}

/** What everything that writes history has in its hand. */
export interface History {
  readonly sink: RowSink;
  readonly numbers: Numbers;
  readonly films: FilmHistory;
  readonly plant: BenchPlant;
  readonly random: Random;
}
