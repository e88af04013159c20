/**
 * Kilobytes of pages that each connection to the file keeps: together far below what the driver would take for each (16 000).
 * What is not kept is in the memory of the operating system.
 */
const kilobytes = { writer: 4000, reader: 1000, heavy: 2000 } as const;

/** The pragma that says so. */
export function cacheOf(connection: keyof typeof kilobytes): string {
  return `cache_size = -${kilobytes[connection]}`;
}
