import { Entity, Index } from 'typeorm';
import {
  BytesColumn,
  IdColumn,
  InstantColumn,
  RefColumn,
  WholeColumn,
  WordColumn,
} from '../../platform/database/columns.js';
import { FileLayout } from './file-layout.entity.js';
import { PackWeigher } from '../pack-weigher.entity.js';

/**
 * A file of weights between its dry run and the act that stores it. No fact: it goes after two days, whatever became of it.
 * What lasts is the journal's entry, with the digest of the file.
 */
@Entity('weight_file')
@Index(['broughtAt'])
export class WeightFile {
  @IdColumn()
  id!: string;

  @RefColumn(() => PackWeigher)
  weigherId!: string;

  /** What its columns meant when it was brought: it is stored as it was shown. */
  @RefColumn(() => FileLayout)
  layoutId!: string;

  @WordColumn()
  name!: string;

  /** SHA-256 of the file as it came. */
  @WordColumn()
  digest!: string;

  @WholeColumn()
  byteCount!: number;

  /** Packed by gzip. */
  @BytesColumn()
  packed!: Buffer;

  @InstantColumn()
  broughtAt!: string;
}
