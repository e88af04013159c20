import { Entity, PrimaryColumn } from 'typeorm';
import { BigWholeColumn } from './columns.js';

/** The next number of a series at a site: bag numbers, SSCC serials, delivery notes. */
@Entity('number_series')
export class NumberSeries {
  @PrimaryColumn({ type: 'varchar' })
  siteId!: string;

  @PrimaryColumn({ type: 'varchar' })
  name!: string;

  @BigWholeColumn()
  nextNumber!: number;
}
