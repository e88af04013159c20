import { Entity, Unique } from 'typeorm';
import { Customer } from '../plant/customer.entity.js';
import { Site } from '../plant/site.entity.js';
import {
  DayColumn,
  IdColumn,
  InstantColumn,
  RefColumn,
  TextColumn,
  VoidedByColumn,
  WholeColumn,
  WordColumn,
} from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';

/** What somebody outside said of a pack or bag. Who it was stands apart, so that it can go. */
@Fact()
@Entity('complaint')
@Unique(['siteId', 'number'])
export class Complaint {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @WordColumn()
  number!: string;

  /** The customer of the plant through whom it came; null: straight from who bought it. */
  @RefColumn(() => Customer, { nullable: true })
  customerId!: string | null;

  /** As the customer read it off the pack; null: there was none to read. */
  @WordColumn({ nullable: true })
  codeAsRead!: string | null;

  /** Shop and town, as told. */
  @WordColumn({ nullable: true })
  boughtWhere!: string | null;

  @DayColumn({ nullable: true })
  boughtOn!: string | null;

  @WholeColumn({ nullable: true })
  packCount!: number | null;

  /** What is wrong, in the customer's words. */
  @TextColumn()
  words!: string;

  @InstantColumn()
  receivedAt!: string;

  @VoidedByColumn()
  voidedBy!: string | null;
}
