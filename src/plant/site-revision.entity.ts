import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, WholeColumn, WordColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Site } from './site.entity.js';

/** What a site is called and numbered by since it was changed; the latest row holds, the site's own row before the first. */
@Fact()
@Entity('site_revision')
@Index(['siteId'])
export class SiteRevision {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @WordColumn()
  name!: string;

  @WordColumn()
  timeZone!: string;

  @WordColumn()
  productionDayStart!: string;

  @WordColumn()
  gln!: string;

  @WordColumn()
  companyPrefix!: string;

  @WholeColumn()
  ssccExtensionDigit!: number;

  @InstantColumn()
  changedAt!: string;
}
