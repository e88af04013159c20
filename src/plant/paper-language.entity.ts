import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, WordColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Customer } from './customer.entity.js';
import { Site } from './site.entity.js';

/** In which language papers are written for a customer, or where there is none, for the site; the latest row holds. */
@Fact()
@Entity('paper_language')
@Index(['siteId'])
@Index(['customerId'])
export class PaperLanguage {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @RefColumn(() => Customer, { nullable: true })
  customerId!: string | null;

  /** Null for a customer: as the site's papers. */
  @WordColumn({ nullable: true })
  language!: string | null;

  @InstantColumn()
  setAt!: string;
}
