import { Entity, Index } from 'typeorm';
import {
  IdColumn,
  InstantColumn,
  RefColumn,
  TextColumn,
  VoidedByColumn,
  WordColumn,
} from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Site } from './site.entity.js';

/** A set of rules of the house, from an instant on: the vehicle check, the tipping at risk, limits of lateness. */
@Fact()
@Entity('rule_set')
@Index(['siteId', 'kind', 'validFrom'], { unique: true, where: '"voided_by" IS NULL' })
export class RuleSet {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @WordColumn()
  kind!: string;

  @InstantColumn()
  validFrom!: string;

  /** Canonical text. */
  @TextColumn()
  rules!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
