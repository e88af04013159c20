import { Entity, Index } from 'typeorm';
import { IdColumn, RefColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { SsccBlock } from './sscc-block.entity.js';

/** One number of a block. It is used once a pallet bears it, and never again after that. */
@Fact()
@Entity('sscc_set_aside')
@Index(['blockId'])
export class SsccSetAside {
  @IdColumn()
  sscc!: string;

  @RefColumn(() => SsccBlock)
  blockId!: string;
}
