import { Entity, Unique } from 'typeorm';
import { IdColumn, RefColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Person } from '../people/person.entity.js';
import { Decision } from './decision.entity.js';

/** Who stands behind a decision beside the one who took it. */
@Fact()
@Entity('decision_second_person')
@Unique(['decisionId'])
export class DecisionSecondPerson {
  @IdColumn()
  id!: string;

  @RefColumn(() => Decision)
  decisionId!: string;

  @RefColumn(() => Person)
  personId!: string;
}
