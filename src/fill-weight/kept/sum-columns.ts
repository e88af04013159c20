import { BigWholeColumn, WholeColumn } from '../../platform/database/columns.js';

/** Exact sums over packs as columns. Sums of squares pass 2^53 where packs are far off, so they are kept in two parts. */
export class SumColumns {
  @BigWholeColumn()
  packCount!: number;

  /** Of net less nominal quantity. */
  @BigWholeColumn()
  errorSumMilligrams!: number;

  /** Of the squares of that, in square milligrams: so many times 2^32 … */
  @BigWholeColumn()
  squaresHigh!: number;

  /** … and so many more. */
  @BigWholeColumn()
  squaresLow!: number;

  @WholeColumn({ nullable: true })
  smallestMilligrams!: number | null;

  @WholeColumn({ nullable: true })
  largestMilligrams!: number | null;

  /** Packs beyond T1, those beyond T2 among them. */
  @BigWholeColumn()
  beyondT1Count!: number;

  @BigWholeColumn()
  beyondT2Count!: number;
}
