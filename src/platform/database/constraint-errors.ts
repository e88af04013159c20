/** Whether the database refused a row because its key is taken: the losing side of a race, or a repeated fact. */
export function isTakenKey(error: unknown): boolean {
  const { code, message } = error as { code?: unknown; message?: unknown };
  if (code === '23505') return true;
  return typeof message === 'string' && /UNIQUE (constraint failed|fact:)/.test(message);
}

/** Whether PostgreSQL gave up waiting for a lock after the unit's five seconds. */
export function isLockTimeout(error: unknown): boolean {
  return (error as { code?: unknown } | null)?.code === '55P03';
}
