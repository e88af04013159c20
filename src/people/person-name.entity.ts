import { Entity } from 'typeorm';
import { IdColumn, WordColumn } from '../platform/database/columns.js';

/** A person's name: not a fact, removed when retention ends. */
@Entity('person_name')
export class PersonName {
  @IdColumn()
  personId!: string;

  @WordColumn()
  name!: string;

  @WordColumn()
  language!: string;
}
