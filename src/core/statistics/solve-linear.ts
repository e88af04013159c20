/**
 * Solves as many linear equations as there are unknowns, after Gauss with the largest pivot of each column.
 *
 * @param matrix one row for each equation, each as long as there are rows; not changed
 * @param right one number for each equation
 * @returns the unknowns in the order of the columns; for well-conditioned equations relative error about 10⁻¹⁴
 * @throws RangeError where the shapes do not fit, or the equations do not settle the unknowns
 * @example solveLinear([[2, 1], [1, 3]], [5, 10]) // [1, 3]
 */
export function solveLinear(matrix: readonly (readonly number[])[], right: readonly number[]): readonly number[] {
  const size = matrix.length;
  if (right.length !== size || matrix.some((row) => row.length !== size)) throw new RangeError('The shapes do not fit');
  const rows = matrix.map((row, at) => Float64Array.from([...row, right[at] ?? NaN]));
  for (let column = 0; column < size; column += 1) eliminate(rows, column);
  const solution = new Float64Array(size);
  for (let at = size - 1; at >= 0; at -= 1) {
    const row = rows[at] ?? new Float64Array();
    let rest = row[size] ?? NaN;
    for (let column = at + 1; column < size; column += 1) rest -= (row[column] ?? NaN) * (solution[column] ?? NaN);
    solution[at] = rest / (row[at] ?? NaN);
  }
  return [...solution];
}

/** Takes the row with the largest number in a column as many times off those below that the column is 0 there. */
function eliminate(rows: Float64Array[], column: number): void {
  let best = column;
  const sizeAt = (row: number) => Math.abs(rows[row]?.[column] ?? 0);
  for (let row = column + 1; row < rows.length; row += 1) if (sizeAt(row) > sizeAt(best)) best = row;
  const pivot = rows[best];
  const own = rows[column];
  if (pivot === undefined || own === undefined || !(sizeAt(best) > 0)) throw new RangeError('No single solution');
  [rows[column], rows[best]] = [pivot, own];
  for (const row of rows.slice(column + 1)) {
    const share = (row[column] ?? 0) / (pivot[column] ?? 1);
    if (share === 0) continue;
    for (let at = column; at < row.length; at += 1) row[at] = (row[at] ?? 0) - share * (pivot[at] ?? 0);
  }
}
