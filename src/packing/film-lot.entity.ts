import { Entity, Unique } from 'typeorm';
import { IdColumn, RefColumn, VoidedByColumn, WordColumn } from '../platform/database/columns.js';
import { Fact } from '../platform/database/fact-table.js';
import { Site } from '../plant/site.entity.js';

/** A lot of film or preprinted bags, traced like the food. */
@Fact()
@Entity('film_lot')
@Unique(['siteId', 'code'])
export class FilmLot {
  @IdColumn()
  id!: string;

  @RefColumn(() => Site)
  siteId!: string;

  @WordColumn()
  code!: string;

  @WordColumn()
  supplierCode!: string;

  @WordColumn()
  kind!: 'film' | 'preprinted-bag' | 'label' | 'glue';

  @VoidedByColumn()
  voidedBy!: string | null;
}
