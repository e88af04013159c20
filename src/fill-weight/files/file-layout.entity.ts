import { Entity, Index } from 'typeorm';
import { IdColumn, InstantColumn, RefColumn, TextColumn } from '../../platform/database/columns.js';
import { Fact } from '../../platform/database/fact-table.js';
import { PackWeigher } from '../pack-weigher.entity.js';

/** What the columns of the files mean that a pack weigher writes; the latest row holds. */
@Fact()
@Entity('file_layout')
@Index(['weigherId'])
export class FileLayout {
  @IdColumn()
  id!: string;

  @RefColumn(() => PackWeigher)
  weigherId!: string;

  /** Canonical text (`SavedLayout`). */
  @TextColumn()
  layout!: string;

  @InstantColumn()
  setAt!: string;
}
