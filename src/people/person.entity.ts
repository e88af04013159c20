import { Entity, Unique } from 'typeorm';
import { IdColumn, RefColumn, WordColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Site } from '../plant/site.entity.js';

/** A person, by id and a short code. The name stands apart, so that it can go. */
@Fact()
@Entity('person')
@Unique(['siteId', 'code'])
export class Person {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  /** What the person types to sign in. */
  @WordColumn()
  code!: string;
}
