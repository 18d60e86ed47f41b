/** Small square matrices in row order, for hot code: results go into the caller's arrays, nothing is allocated. */

/** out = A·B; out must be neither. */
export function multiply(size: number, a: Float64Array, b: Float64Array, out: Float64Array): void {
  for (let row = 0; row < size; row += 1) {
    for (let column = 0; column < size; column += 1) {
      let sum = 0;
      for (let k = 0; k < size; k += 1) sum += a[row * size + k]! * b[k * size + column]!;
      out[row * size + column] = sum;
    }
  }
}

/** out = A·Bᵀ; out must be neither. */
export function multiplyTransposed(size: number, a: Float64Array, b: Float64Array, out: Float64Array): void {
  for (let row = 0; row < size; row += 1) {
    for (let column = 0; column < size; column += 1) {
      let sum = 0;
      for (let k = 0; k < size; k += 1) sum += a[row * size + k]! * b[column * size + k]!;
      out[row * size + column] = sum;
    }
  }
}

/** out = A·v; out must not be v. */
export function apply(size: number, a: Float64Array, v: Float64Array, out: Float64Array): void {
  for (let row = 0; row < size; row += 1) {
    let sum = 0;
    for (let k = 0; k < size; k += 1) sum += a[row * size + k]! * v[k]!;
    out[row] = sum;
  }
}

/** A pivot below this share of its diagonal is rounding: that direction has no spread. */
const LEAST_PIVOT = 1e-12;

/**
 * Lower triangle L with L·Lᵀ = Q for a covariance Q, which may leave directions without spread: these get a
 * column of zeros. (Cholesky's method.)
 */
export function covarianceRoot(size: number, covariance: Float64Array, out: Float64Array): void {
  out.fill(0);
  for (let column = 0; column < size; column += 1) {
    const diagonal = covariance[column * size + column]!;
    let pivot = diagonal;
    for (let k = 0; k < column; k += 1) pivot -= out[column * size + k]! * out[column * size + k]!;
    if (pivot <= LEAST_PIVOT * diagonal) continue;
    const root = Math.sqrt(pivot);
    out[column * size + column] = root;
    for (let row = column + 1; row < size; row += 1) {
      let sum = covariance[row * size + column]!;
      for (let k = 0; k < column; k += 1) sum -= out[row * size + k]! * out[column * size + k]!;
      out[row * size + column] = sum / root;
    }
  }
}

/** Solves L·Lᵀ·x = v in place, v in the range of L; directions without spread get 0. */
export function solveByRoot(size: number, root: Float64Array, v: Float64Array): void {
  for (let row = 0; row < size; row += 1) {
    const pivot = root[row * size + row]!;
    let sum = v[row]!;
    for (let k = 0; k < row; k += 1) sum -= root[row * size + k]! * v[k]!;
    v[row] = pivot === 0 ? 0 : sum / pivot;
  }
  for (let row = size - 1; row >= 0; row -= 1) {
    const pivot = root[row * size + row]!;
    let sum = v[row]!;
    for (let k = row + 1; k < size; k += 1) sum -= root[k * size + row]! * v[k]!;
    v[row] = pivot === 0 ? 0 : sum / pivot;
  }
}
