import { Entity, Unique } from 'typeorm';
import { IdColumn, RefColumn, WordColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Site } from './site.entity.js';

/** Who receives deliveries. Name and address stand apart, so that they can go. */
@Fact()
@Entity('customer')
@Unique(['siteId', 'code'])
export class Customer {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @WordColumn()
  code!: string;

  @WordColumn({ nullable: true })
  gln!: string | null;
}
