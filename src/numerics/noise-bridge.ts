/**
 * The path of a linear system's noise inside a span, pinned at both ends: it starts at 0 and ends at the increment
 * drawn for the whole span. The span is halved LEVELS times; each middle is drawn by its law given both neighbours,
 * from deviates named by its place. So every instant always gets the same value, whichever instants are asked for
 * and in whatever order. Between the last middles the path is the expected one given its neighbours: what it leaves
 * out there is less than 1/2^LEVELS of the increment's variance.
 *
 * Law used, over a half of duration δ with independent additions g₁, g₂ of covariance Q(δ), Φ = e^{Aδ}: given
 * G = Φg₁ + g₂, g₁ is normal with mean K·G and covariance Q(δ) − KΦQ(δ), K = Q(δ)Φᵀ·Q(2δ)⁻¹ (the conditional law of
 * jointly normal vectors).
 */
import { type LinearStep, type LinearSystem, newLinearStep } from './linear-system.ts';
import { apply, covarianceRoot, multiply, solveByRoot } from './matrix.ts';

/** Halvings of the span: 32 cells. */
const LEVELS = 5;

/** Fills `out` with normal deviates that depend on `node` only: 0 the increment, 1 … 31 the middles. */
export type DeviateSource = (node: number, out: Float64Array) => void;

interface Level {
  /** e^{Aδ} of the half. */
  readonly transition: Float64Array;
  /** K */
  readonly gain: Float64Array;
  /** Root of the covariance of g₁ given G. */
  readonly spread: Float64Array;
}

export class NoiseBridge {
  readonly size: number;
  readonly #system: LinearSystem;
  readonly #spanS: number;
  readonly #spanTransition: Float64Array;
  readonly #spanRoot: Float64Array;
  readonly #levels: Level[] = [];
  /** Root of Q over a last cell. */
  readonly #cellRoot: Float64Array;
  readonly #deviates: Float64Array;
  readonly #left: Float64Array;
  readonly #right: Float64Array;
  readonly #middle: Float64Array;
  readonly #gap: Float64Array;
  readonly #early: LinearStep;
  readonly #late: LinearStep;

  constructor(system: LinearSystem, spanS: number) {
    const n = system.size;
    this.size = n;
    this.#system = system;
    this.#spanS = spanS;
    this.#spanRoot = new Float64Array(n * n);
    this.#cellRoot = new Float64Array(n * n);
    this.#deviates = new Float64Array(n);
    this.#left = new Float64Array(n);
    this.#right = new Float64Array(n);
    this.#middle = new Float64Array(n);
    this.#gap = new Float64Array(n);
    this.#early = newLinearStep(n, system.inputs);
    this.#late = newLinearStep(n, system.inputs);

    const step = newLinearStep(n, system.inputs);
    system.step(spanS, step);
    covarianceRoot(n, step.covariance, this.#spanRoot);
    this.#spanTransition = transitionOf(n, step);
    let wholeRoot = this.#spanRoot;
    for (let level = 1; level <= LEVELS; level += 1) {
      system.step(spanS / (1 << level), step);
      this.#levels.push(levelOf(n, step, wholeRoot));
      wholeRoot = new Float64Array(n * n);
      covarianceRoot(n, step.covariance, wholeRoot);
    }
    this.#cellRoot = wholeRoot;
  }

  /** What the noise adds over the whole span. */
  increment(source: DeviateSource, out: Float64Array): void {
    source(0, this.#deviates);
    apply(this.size, this.#spanRoot, this.#deviates, out);
  }

  /** What it has added by τ [s] of the span, given the increment. */
  at(tauS: number, increment: Float64Array, source: DeviateSource, out: Float64Array): void {
    const n = this.size;
    const left = this.#left.fill(0);
    const right = this.#right;
    const middle = this.#middle;
    right.set(increment);
    let leftS = 0;
    let widthS = this.#spanS;
    let node = 1;
    let whole = this.#spanTransition;
    for (const { transition, gain, spread } of this.#levels) {
      this.#gapBetween(whole);
      // middle = Φ·left + K·G + a deviate
      apply(n, transition, left, middle);
      apply(n, gain, this.#gap, out);
      for (let i = 0; i < n; i += 1) middle[i]! += out[i]!;
      source(node, this.#deviates);
      apply(n, spread, this.#deviates, out);
      for (let i = 0; i < n; i += 1) middle[i]! += out[i]!;
      widthS /= 2;
      whole = transition;
      if (tauS < leftS + widthS) {
        right.set(middle);
        node *= 2;
      } else {
        left.set(middle);
        leftS += widthS;
        node = 2 * node + 1;
      }
    }
    this.#within(Math.min(tauS - leftS, widthS), widthS, whole, out);
  }

  /** The expected path `s` into a last cell: Φ(s)·left + Q(s)·Φ(δ−s)ᵀ·Q(δ)⁻¹·G. */
  #within(s: number, cellS: number, whole: Float64Array, out: Float64Array): void {
    const n = this.size;
    const { change, covariance } = this.#early;
    this.#gapBetween(whole);
    solveByRoot(n, this.#cellRoot, this.#gap);
    this.#system.step(s, this.#early);
    this.#system.step(cellS - s, this.#late);
    const middle = this.#middle;
    for (let i = 0; i < n; i += 1) {
      let sum = this.#gap[i]!;
      for (let k = 0; k < n; k += 1) sum += this.#late.change[k * n + i]! * this.#gap[k]!;
      middle[i] = sum;
    }
    for (let i = 0; i < n; i += 1) {
      let sum = this.#left[i]!;
      for (let k = 0; k < n; k += 1) sum += change[i * n + k]! * this.#left[k]! + covariance[i * n + k]! * middle[k]!;
      out[i] = sum;
    }
  }

  /** G = right − Φ·left over the present interval. */
  #gapBetween(transition: Float64Array): void {
    apply(this.size, transition, this.#left, this.#gap);
    for (let i = 0; i < this.size; i += 1) this.#gap[i] = this.#right[i]! - this.#gap[i]!;
  }
}

function transitionOf(n: number, { change }: LinearStep): Float64Array {
  const transition = change.slice();
  for (let i = 0; i < n; i += 1) transition[i * n + i]! += 1;
  return transition;
}

/** K and the spread of a half from its step and the root of Q over the whole. */
function levelOf(n: number, half: LinearStep, wholeRoot: Float64Array): Level {
  const transition = transitionOf(n, half);
  const q = half.covariance;
  // K = (Q(2δ)⁻¹·Φ·Q(δ))ᵀ, row by row: Q is symmetric.
  const carried = new Float64Array(n * n);
  multiply(n, transition, q, carried);
  const gain = new Float64Array(n * n);
  const column = new Float64Array(n);
  for (let row = 0; row < n; row += 1) {
    for (let k = 0; k < n; k += 1) column[k] = carried[k * n + row]!;
    solveByRoot(n, wholeRoot, column);
    gain.set(column, row * n);
  }
  // K·Φ·Q(δ) = K·carried, symmetric
  const explained = new Float64Array(n * n);
  multiply(n, gain, carried, explained);
  const left = new Float64Array(n * n);
  for (let i = 0; i < n * n; i += 1) left[i] = q[i]! - explained[i]!;
  const spread = new Float64Array(n * n);
  covarianceRoot(n, left, spread);
  return { transition, gain, spread };
}
