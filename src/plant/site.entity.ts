import { Entity, Unique } from 'typeorm';
import { IdColumn, WholeColumn, WordColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';

/** A packing house: its time zone, the hour at which its production day starts, and its GS1 numbers. */
@Fact()
@Entity('site')
@Unique(['code'])
export class Site {
  @IdColumn()
  id!: string;

  @WordColumn()
  code!: string;

  @WordColumn()
  name!: string;

  /** IANA name, such as Europe/Berlin. */
  @WordColumn()
  timeZone!: string;

  /** Local wall time, HH:mm. */
  @WordColumn()
  productionDayStart!: string;

  @WordColumn()
  gln!: string;

  /** GS1 company prefix, 4 to 12 digits. */
  @WordColumn()
  companyPrefix!: string;

  @WholeColumn()
  ssccExtensionDigit!: number;
}
