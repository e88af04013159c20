import { Entity, Index } from 'typeorm';
import { FlagColumn, IdColumn, InstantColumn, RefColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { PackWeigher } from './pack-weigher.entity.js';

/** Whether a pack weigher may send by MQTT; the latest row holds. One that has no row may not. */
@Fact()
@Entity('weigher_way')
@Index(['weigherId'])
export class WeigherWay {
  @IdColumn()
  id!: string;

  @RefColumn(() => PackWeigher)
  weigherId!: string;

  @FlagColumn()
  takesMqtt!: boolean;

  @InstantColumn()
  setAt!: string;
}
