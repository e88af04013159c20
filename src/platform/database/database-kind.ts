/** The two databases that one history of the schema serves. */
export type DatabaseKind = 'sqlite' | 'postgres';
