import { Entity, Index } from 'typeorm';
import {
  IdColumn,
  InstantColumn,
  RefColumn,
  TextColumn,
  VoidedByColumn,
  WholeColumn,
  WordColumn,
} from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Site } from '../plant/site.entity.js';

/**
 * What somebody entered while the network or the server was away, and the house could not take as it stands: kept as it
 * came, for a person to look at.
 */
@Fact()
@Entity('kept_entry')
@Index(['siteId', 'entryKey'])
export class KeptEntry {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  /** Who entered it. */
  @WordColumn({ nullable: true })
  personId!: string | null;

  @WordColumn({ nullable: true })
  deviceId!: string | null;

  /** The route that was meant, with its method, and the address with its ids. */
  @WordColumn()
  route!: string;

  @WordColumn()
  address!: string;

  /** The key that it was sent with. */
  @WordColumn()
  entryKey!: string;

  /** Canonical text: what was entered. */
  @TextColumn()
  content!: string;

  @WordColumn()
  how!: 'queued' | 'paper';

  @InstantColumn()
  happenedAt!: string;

  @WordColumn({ nullable: true })
  sheet!: string | null;

  @WholeColumn({ nullable: true })
  sheetRow!: number | null;

  @WordColumn({ nullable: true })
  writtenBy!: string | null;

  /** Why it could not be taken: code and, as canonical text, the facts of its sentence. */
  @WordColumn()
  code!: string;

  @TextColumn()
  facts!: string;

  @InstantColumn()
  keptAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
