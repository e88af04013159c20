/** Well below the number of parameters that either database takes in one statement. */
const chunkSize = 500;

/** Runs a query over a long list of ids piece by piece, each id once, and puts the rows together. */
export async function inChunks<Row>(
  ids: readonly string[],
  query: (chunk: readonly string[]) => Promise<readonly Row[]>,
): Promise<Row[]> {
  const unique = [...new Set(ids)];
  const rows: Row[] = [];
  for (let start = 0; start < unique.length; start += chunkSize) {
    rows.push(...(await query(unique.slice(start, start + chunkSize))));
  }
  return rows;
}
