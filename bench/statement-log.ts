import type { DataSource, Logger } from 'typeorm';

/** One statement as it went to the database. */
export interface Statement {
  readonly sql: string;
  readonly parameters: readonly unknown[];
}

/** Writes down every statement of a data source, so that the bare driver can be given the very same. */
export function recordStatements(source: DataSource): { readonly statements: Statement[]; stop(): void } {
  const statements: Statement[] = [];
  const nothing = (): void => undefined;
  const listener: Logger = {
    logQuery: (sql, parameters) => {
      statements.push({ sql, parameters: [...((parameters as unknown[] | undefined) ?? [])] });
    },
    logQueryError: nothing,
    logQuerySlow: nothing,
    logSchemaBuild: nothing,
    logMigration: nothing,
    log: nothing,
  };
  const before = source.logger;
  source.logger = listener;
  return {
    statements,
    stop: () => {
      source.logger = before;
    },
  };
}
