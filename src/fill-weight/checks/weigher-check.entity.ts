import { Entity, Index } from 'typeorm';
import { LineCheck } from '../../line-checks/line-check.entity.js';
import { Device } from '../../people/device.entity.js';
import {
  BigWholeColumn,
  IdColumn,
  InstantColumn,
  RefColumn,
  TextColumn,
  WordColumn,
} from '../../platform/database/columns.js';
import { Fact } from '../../platform/database/fact-table.js';
import { PackWeigher } from '../pack-weigher.entity.js';

/** A pack weigher sent the result of a check of its own: which line check it is, and what it sent. */
@Fact()
@Entity('weigher_check')
@Index(['deviceId', 'series', 'sequence'], { unique: true })
@Index(['checkId'])
export class WeigherCheck {
  @IdColumn()
  id!: string;

  @RefColumn(() => PackWeigher)
  weigherId!: string;

  @RefColumn(() => Device)
  deviceId!: string;

  /** Names the machine's counter of checks: another one where it began again. */
  @WordColumn()
  series!: string;

  @BigWholeColumn()
  sequence!: number;

  @RefColumn(() => LineCheck)
  checkId!: string;

  /** Canonical text: each reading as it was sent, with what the machine expected. */
  @TextColumn()
  readings!: string;

  /** SHA-256 of what was sent, so that another check under the same sequence is told from the same one again. */
  @WordColumn()
  digest!: string;

  @InstantColumn()
  receivedAt!: string;
}
