import { DefaultNamingStrategy, type NamingStrategyInterface, type Table } from 'typeorm';

const snake = (name: string): string => name.replace(/([a-z0-9])([A-Z])/g, '$1_$2').toLowerCase();
const tableName = (table: Table | string): string =>
  (typeof table === 'string' ? table : table.name).replace(/^.*\./, '');

/** Names that people can read in an error: `pk_tip`, `fk_tip_bag_id`, `uq_pallet_sscc`. */
export class HouseNaming extends DefaultNamingStrategy implements NamingStrategyInterface {
  override columnName(propertyName: string, customName: string | undefined, prefixes: string[]): string {
    return snake([...prefixes, customName ?? propertyName].join('_'));
  }
  override joinColumnName(relationName: string, referencedColumnName: string): string {
    return snake(`${relationName}_${referencedColumnName}`);
  }
  override primaryKeyName(table: Table | string): string {
    return `pk_${tableName(table)}`;
  }
  override uniqueConstraintName(table: Table | string, columns: string[]): string {
    return `uq_${tableName(table)}_${columns.join('_')}`;
  }
  override foreignKeyName(table: Table | string, columns: string[]): string {
    return `fk_${tableName(table)}_${columns.join('_')}`;
  }
  override indexName(table: Table | string, columns: string[]): string {
    return `ix_${tableName(table)}_${columns.join('_')}`;
  }
}
