import { covarianceRoot, solveByRoot } from '../numerics/matrix.ts';

/**
 * Linear least squares by the normal equations: `row(k)` writes the k-th row of the design matrix into `columns` and
 * returns the value to be met. Good for a handful of well-scaled columns (the condition number is squared).
 * Returns the coefficients.
 */
export function leastSquares(
  count: number,
  size: number,
  row: (k: number, columns: Float64Array) => number,
): Float64Array {
  const normal = new Float64Array(size * size);
  const right = new Float64Array(size);
  const columns = new Float64Array(size);
  for (let k = 0; k < count; k += 1) {
    const value = row(k, columns);
    for (let i = 0; i < size; i += 1) {
      right[i]! += columns[i]! * value;
      for (let j = 0; j <= i; j += 1) normal[i * size + j]! += columns[i]! * columns[j]!;
    }
  }
  for (let i = 0; i < size; i += 1) for (let j = i + 1; j < size; j += 1) normal[i * size + j] = normal[j * size + i]!;
  const root = new Float64Array(size * size);
  covarianceRoot(size, normal, root);
  solveByRoot(size, root, right);
  return right;
}
