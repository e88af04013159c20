import { Entity, Unique } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, VoidedByColumn, WordColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Dryer } from '../plant/dryer.entity.js';
import { Grade } from '../plant/grade.entity.js';
import { Site } from '../plant/site.entity.js';

/** A dryer makes one grade from here on until the run ends. */
@Fact()
@Entity('dryer_run')
@Unique(['siteId', 'number'])
export class DryerRun {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @RefColumn(() => Dryer)
  dryerId!: string;

  @RefColumn(() => Grade)
  gradeId!: string;

  @WordColumn()
  number!: string;

  @InstantColumn()
  startedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
