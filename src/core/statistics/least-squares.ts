/** A model to fit: its parameters are moved until the residuals, each in units of its own uncertainty, are smallest. */
export interface LeastSquaresProblem {
  /** Where to start, near enough that the model bends the right way; one or more parameters. */
  readonly start: readonly number[];
  /** By how much each parameter changes things noticeably: its unit for derivatives; above 0. */
  readonly scales: readonly number[];
  /** (measured − modelled)/standard uncertainty, at least as many as parameters, always in the same order. */
  readonly residualsAt: (parameters: readonly number[]) => readonly number[];
}

export interface LeastSquaresFit {
  readonly parameters: readonly number[];
  /** Of the parameters, as long as the residuals' uncertainties are true: rows and columns in their order. */
  readonly covariance: readonly (readonly number[])[];
  readonly sumOfSquares: number;
  /** Residuals less parameters. */
  readonly degreesOfFreedom: number;
}

const mostRounds = 80;
/** Of a parameter's scale; central differences then lose about a third of the digits. */
const derivativeStep = 1e-5;
const leastDamping = 1e-12;
const mostDamping = 1e12;
/** A round that moves no parameter by more than this part of its scale is the last. */
const settledStep = 1e-9;

/**
 * Fits a model by least squares after Levenberg and Marquardt, with derivatives by central differences.
 *
 * @returns the fit; null where it does not settle in 80 rounds or a parameter makes no difference, so that nothing can
 * be said about it. On NIST's Misra1a it has eight of the certified digits of the parameters and six of their standard
 * deviations
 * @throws RangeError when there are fewer residuals than parameters, or the start has no finite residuals
 * @see Press et al., Numerical Recipes, 15.5 (from memory)
 * @example fitLeastSquares({ start: [0], scales: [1], residualsAt: ([mean = 0]) => [1 - mean, 3 - mean] })
 * // { parameters: [2], covariance: [[0.5]], sumOfSquares: 2, degreesOfFreedom: 1 }
 */
export function fitLeastSquares(problem: LeastSquaresProblem): LeastSquaresFit | null {
  let parameters = problem.start;
  let residuals = problem.residualsAt(parameters);
  if (residuals.length < parameters.length) throw new RangeError('A fit needs as many residuals as parameters');
  let sum = sumOfSquares(residuals);
  if (!Number.isFinite(sum)) throw new RangeError('The start of a fit must have finite residuals');
  let damping = 1e-3;
  for (let round = 0; round < mostRounds; round += 1) {
    const { curvature, slope } = linearize(problem, parameters, residuals);
    const step = solve(
      curvature.map((row, i) => row.map((value, j) => (i === j ? value * (1 + damping) : value))),
      slope,
    );
    if (step === null) return null;
    const next = parameters.map((value, i) => value + (step[i] ?? 0));
    const nextResiduals = problem.residualsAt(next);
    const nextSum = sumOfSquares(nextResiduals);
    const isBetter = nextSum <= sum;
    const isSettled = step.every((size, i) => Math.abs(size) <= settledStep * (problem.scales[i] ?? 1));
    const isPlain = damping <= 1;
    const gainsNothing = isBetter && sum - nextSum <= 1e-12 * sum;
    if (isBetter) [parameters, residuals, sum] = [next, nextResiduals, nextSum];
    damping = isBetter ? Math.max(leastDamping, damping / 10) : damping * 10;
    // A small step says that the minimum is near, unless it was damped small; damped to nothing, there is none better.
    if (isSettled && (isPlain || gainsNothing || damping > mostDamping)) return finish(problem, parameters, residuals);
  }
  return null;
}

function finish(
  problem: LeastSquaresProblem,
  parameters: readonly number[],
  residuals: readonly number[],
): LeastSquaresFit | null {
  const { curvature } = linearize(problem, parameters, residuals);
  const columns = parameters.map((_, at) =>
    solve(
      curvature,
      parameters.map((__, i) => (i === at ? 1 : 0)),
    ),
  );
  const covariance = columns.filter((column) => column !== null);
  if (covariance.length < parameters.length) return null;
  const degreesOfFreedom = residuals.length - parameters.length;
  return { parameters, covariance, sumOfSquares: sumOfSquares(residuals), degreesOfFreedom };
}

/** JᵀJ and −Jᵀr, J being how the residuals change with the parameters. */
function linearize(
  { scales, residualsAt }: LeastSquaresProblem,
  parameters: readonly number[],
  residuals: readonly number[],
): { readonly curvature: readonly (readonly number[])[]; readonly slope: readonly number[] } {
  const changes = parameters.map((_, moved) => {
    const step = derivativeStep * (scales[moved] ?? 1);
    const shifted = (by: number) => residualsAt(parameters.map((value, i) => (i === moved ? value + by : value)));
    const [above, below] = [shifted(step), shifted(-step)];
    return above.map((value, i) => (value - (below[i] ?? 0)) / (2 * step));
  });
  const product = (one: readonly number[], other: readonly number[]) =>
    one.reduce((sum, value, i) => sum + value * (other[i] ?? 0), 0);
  return {
    curvature: changes.map((one) => changes.map((other) => product(one, other))),
    slope: changes.map((one) => -product(one, residuals)),
  };
}

/** Solves a symmetric positive system by Cholesky's decomposition; null where it is not positive. */
function solve(matrix: readonly (readonly number[])[], right: readonly number[]): readonly number[] | null {
  const factor: number[][] = [];
  const forward: number[] = [];
  for (const [i, row] of matrix.entries()) {
    const own: number[] = [];
    for (let j = 0; j <= i; j += 1) {
      const above = factor[j] ?? own;
      const rest = (row[j] ?? 0) - own.reduce((sum, value, k) => sum + value * (above[k] ?? 0), 0);
      const isDiagonal = i === j;
      // What is left of the diagonal is rounding where a parameter makes no difference of its own.
      if (isDiagonal && !(rest > (row[i] ?? 0) * 1e-14)) return null;
      own.push(isDiagonal ? Math.sqrt(rest) : rest / (above[j] ?? 1));
    }
    factor.push(own);
    const known = own.slice(0, i).reduce((sum, value, k) => sum + value * (forward[k] ?? 0), 0);
    forward.push(((right[i] ?? 0) - known) / (own[i] ?? 1));
  }
  const solution: number[] = [...forward];
  for (let i = matrix.length - 1; i >= 0; i -= 1) {
    let rest = forward[i] ?? 0;
    for (let k = i + 1; k < matrix.length; k += 1) rest -= (factor[k]?.[i] ?? 0) * (solution[k] ?? 0);
    solution[i] = rest / (factor[i]?.[i] ?? 1);
  }
  return solution;
}

function sumOfSquares(residuals: readonly number[]): number {
  return residuals.reduce((sum, value) => sum + value * value, 0);
}
