import { Entity, Unique } from 'typeorm';
import {
  BigWholeColumn,
  IdColumn,
  InstantColumn,
  RefColumn,
  TextColumn,
  WordColumn,
} from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Site } from '../plant/site.entity.js';

/** Quality has looked at an entry of the journal that came late or corrected another. The entry itself says all else. */
@Fact()
@Entity('change_review')
@Unique(['siteId', 'sequence'])
export class ChangeReview {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  /** Of the journal entry, within its site's chain. */
  @BigWholeColumn()
  sequence!: number;

  @WordColumn()
  entryId!: string;

  @TextColumn({ nullable: true })
  note!: string | null;

  @WordColumn({ nullable: true })
  personId!: string | null;

  @InstantColumn()
  reviewedAt!: string;
}
