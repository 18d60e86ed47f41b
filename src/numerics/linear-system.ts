/**
 * The exact step of a linear system z′ = A·z + Σ B_j·f_j(t) + white noise, with each f_j a parabola over the step:
 *     z(τ) = z₀ + (e^{Aτ} − 1)z₀ + Σ (f·G_0 + f′·G_1 + f″·G_2)      G_k = ∫e^{A(τ−u)}B u^k/k! du, f_j at the start
 *     covariance of what the noise adds   Q = ∫e^{Au}·S·e^{Aᵀu} du   (S its two-sided intensity)
 * By Taylor series over τ/2^m and m doublings, as in oscillator.ts; Q doubles as Q + e^{Aτ}·Q·e^{Aᵀτ}, a sum of
 * covariances, so it is accurate for short steps too. (The integrals together: C. F. Van Loan, IEEE Trans. Autom.
 * Control 23 (1978) 395–404, from memory.) Measured error: below 1e-14 of the largest entry up to |A|τ = 20.
 */
import { apply, multiply, multiplyTransposed } from './matrix.ts';

/** The series is taken where |A|τ is at most this; then so many terms leave less than 1e-17. */
const SERIES_REACH = 0.5;
const TERMS = 15;
const NOISE_TERMS = 22;

/** The numbers of one step. */
export interface LinearStep {
  /** e^{Aτ} − 1, in row order. */
  readonly change: Float64Array;
  /** G_0, G_1, G_2 of the first input, then of the next. */
  readonly input0: Float64Array;
  readonly input1: Float64Array;
  readonly input2: Float64Array;
  /** Q, in row order. */
  readonly covariance: Float64Array;
}

export function newLinearStep(size: number, inputs: number): LinearStep {
  const square = size * size;
  return {
    change: new Float64Array(square),
    input0: new Float64Array(inputs * size),
    input1: new Float64Array(inputs * size),
    input2: new Float64Array(inputs * size),
    covariance: new Float64Array(square),
  };
}

export class LinearSystem {
  readonly size: number;
  readonly inputs: number;
  readonly #a: Float64Array;
  readonly #b: readonly Float64Array[];
  readonly #intensity: Float64Array | undefined;
  readonly #rate: number;
  readonly #square: Float64Array;
  readonly #other: Float64Array;
  readonly #vector: Float64Array;
  readonly #nextVector: Float64Array;

  /**
   * `a` in row order; `inputs` the B_j; `rate` [1/s] a bound of |A| with its variables scaled to like size;
   * `intensity` S in row order, undefined: no noise.
   */
  constructor(a: Float64Array, inputs: readonly Float64Array[], rate: number, intensity?: Float64Array) {
    this.size = Math.sqrt(a.length);
    this.inputs = inputs.length;
    this.#a = a;
    this.#b = inputs;
    this.#rate = rate;
    this.#intensity = intensity;
    this.#square = new Float64Array(a.length);
    this.#other = new Float64Array(a.length);
    this.#vector = new Float64Array(this.size);
    this.#nextVector = new Float64Array(this.size);
  }

  /** Writes the step of duration τ [s]. */
  step(tauS: number, out: LinearStep): void {
    let t = tauS;
    let doublings = 0;
    for (; this.#rate * t > SERIES_REACH; doublings += 1) t /= 2;
    this.#changeSeries(t, out.change);
    this.#inputSeries(t, out);
    if (this.#intensity) this.#noiseSeries(t, this.#intensity, out.covariance);
    for (; doublings > 0; doublings -= 1) {
      this.#double(t, out);
      t *= 2;
    }
  }

  /** e^{At} − 1 = At(1 + At/2(1 + At/3(…))) */
  #changeSeries(t: number, change: Float64Array): void {
    const n = this.size;
    change.fill(0);
    for (let term = TERMS; term >= 1; term -= 1) {
      for (let i = 0; i < n; i += 1) change[i * n + i]! += 1;
      multiply(n, this.#a, change, this.#square);
      for (let i = 0; i < n * n; i += 1) change[i] = (this.#square[i]! * t) / term;
    }
  }

  /** G_k = Σ AⁿB·t^(n+k+1)/(n+k+1)! */
  #inputSeries(t: number, { input0, input1, input2 }: LinearStep): void {
    const n = this.size;
    const power = this.#vector;
    const next = this.#nextVector;
    input0.fill(0);
    input1.fill(0);
    input2.fill(0);
    for (let input = 0; input < this.inputs; input += 1) {
      power.set(this.#b[input]!);
      let factor = t; // t^(term+1)/(term+1)!, with the powers of A in `power`
      for (let term = 0; term < TERMS; term += 1) {
        const factor1 = (factor * t) / (term + 2);
        const factor2 = (factor1 * t) / (term + 3);
        for (let i = 0; i < n; i += 1) {
          input0[input * n + i]! += power[i]! * factor;
          input1[input * n + i]! += power[i]! * factor1;
          input2[input * n + i]! += power[i]! * factor2;
        }
        apply(n, this.#a, power, next);
        power.set(next);
        factor = factor1;
      }
    }
  }

  /** Q = Σ Lⁿ(S)·t^(n+1)/(n+1)! with L(X) = A·X + X·Aᵀ, since Q′ = L(Q) + S. */
  #noiseSeries(t: number, intensity: Float64Array, covariance: Float64Array): void {
    const n = this.size;
    const term = this.#square;
    term.set(intensity);
    covariance.fill(0);
    for (let k = 1; k <= NOISE_TERMS; k += 1) {
      for (let i = 0; i < n * n; i += 1) {
        term[i] = (term[i]! * t) / k;
        covariance[i]! += term[i]!;
      }
      multiply(n, this.#a, term, this.#other);
      for (let row = 0; row < n; row += 1)
        for (let column = 0; column < n; column += 1)
          term[row * n + column] = this.#other[row * n + column]! + this.#other[column * n + row]!;
    }
  }

  /** From a step of t to one of 2t. */
  #double(t: number, { change, input0, input1, input2, covariance }: LinearStep): void {
    const n = this.size;
    for (let from = 0; from < this.inputs * n; from += n) {
      this.#carry(change, input2, from);
      for (let i = 0; i < n; i += 1)
        input2[from + i]! += this.#vector[i]! + t * input1[from + i]! + ((t * t) / 2) * input0[from + i]!;
      this.#carry(change, input1, from);
      for (let i = 0; i < n; i += 1) input1[from + i]! += this.#vector[i]! + t * input0[from + i]!;
      this.#carry(change, input0, from);
      for (let i = 0; i < n; i += 1) input0[from + i]! += this.#vector[i]!;
    }
    if (this.#intensity) {
      // Q + (1 + E)·Q·(1 + E)ᵀ, with X = Q + E·Q: Q + X + X·Eᵀ
      const x = this.#square;
      multiply(n, change, covariance, x);
      for (let i = 0; i < n * n; i += 1) x[i]! += covariance[i]!;
      multiplyTransposed(n, x, change, this.#other);
      for (let i = 0; i < n * n; i += 1) covariance[i]! += x[i]! + this.#other[i]!;
    }
    multiply(n, change, change, this.#square);
    for (let i = 0; i < n * n; i += 1) change[i] = 2 * change[i]! + this.#square[i]!;
  }

  /** Carries the vector of G that stands from `from` over the step: into #vector. */
  #carry(change: Float64Array, g: Float64Array, from: number): void {
    const n = this.size;
    for (let i = 0; i < n; i += 1) {
      let sum = g[from + i]!;
      for (let k = 0; k < n; k += 1) sum += change[i * n + k]! * g[from + k]!;
      this.#vector[i] = sum;
    }
  }
}
