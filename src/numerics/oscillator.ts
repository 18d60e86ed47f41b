/**
 * The exact step of a damped oscillator, x″ + 2ζωx′ + ω²x = −f(t), with f a parabola over the step.
 *
 * With s(t) the response to a unit kick (s(0) = 0, s′(0) = 1) and I_k its k-fold integral (I_0 = s),
 *     x(τ) = x₀ + v₀I_0 − g₀I_1 − g₁I_2 − g₂I_3 + …      g₀ = f(0) + ω²x₀, g₁ = f′, g₂ = f″
 *     v(τ) = v₀ + v₀(I_0′ − 1) − g₀I_0 − g₁I_1 − g₂I_2
 * (substitute, using I_k″ + 2ζωI_k′ + ω²I_k = τ^(k−1)/(k−1)!). In this form a mass at rest in balance stays at
 * rest, however small ωτ is: only the unbalanced force g₀ moves it.
 *
 * The I_k come from their Taylor series over τ/2^m, small enough to converge at once, and m doublings
 *     I_k(2τ) = I_k(τ)·(1 + c) + I_0 I_(k−1) + …          c = 1 − ω²I_1
 * whose terms are all ≥ 0 for k ≥ 1. So nothing cancels for small ωτ, nothing overflows for large ωτ or ζ, and
 * critical damping is no special case. (Scaling and squaring: C. Moler, C. Van Loan, SIAM Review 45 (2003) 3–49,
 * method 3.) Measured error: below 2e-15 of the largest response up to ωτ = 1; then it grows as ωτ·1e-16 where
 * damping does not hold it down, as does the rounding of ωτ itself.
 */

/** Numbers per step: I_0, I_0′ − 1, I_1, I_2, I_3. */
export const STEP_NUMBERS = 5;

/** The series is taken where (the larger of 1 and 2ζ)·ωτ is at most this; then 15 terms leave less than 1e-17. */
const SERIES_REACH = 0.5;
const TERMS = 15;

/** 1/n! */
const INVERSE_FACTORIAL = new Float64Array(TERMS + 4);
INVERSE_FACTORIAL[0] = 1;
for (let n = 1; n < INVERSE_FACTORIAL.length; n += 1) INVERSE_FACTORIAL[n] = INVERSE_FACTORIAL[n - 1]! / n;

/** Writes the step of duration τ [s] into `out` from `at`. ω [rad/s] > 0, ζ ≥ 0. */
export function oscillatorStep(omega: number, zeta: number, tauS: number, out: Float64Array, at: number): void {
  const a = 2 * zeta * omega;
  const b = omega * omega;
  const rate = Math.max(omega, a);
  let t = tauS;
  let doublings = 0;
  for (; rate * t > SERIES_REACH; doublings += 1) t /= 2;

  // s(t) = Σ d_n t^(n+1)/(n+1)!, d_n = −a d_(n−1) − b d_(n−2); `term` is d_n t^n.
  let term = 1;
  let before = 0;
  let sum2 = 0;
  let sum3 = 0;
  for (let n = 0; n < TERMS; n += 1) {
    sum2 += term * INVERSE_FACTORIAL[n + 3]!;
    sum3 += term * INVERSE_FACTORIAL[n + 4]!;
    const next = -a * t * term - b * t * t * before;
    before = term;
    term = next;
  }
  let i3 = sum3 * t * t * t * t;
  let i2 = sum2 * t * t * t;
  // I_k = t^(k+1)/(k+1)! − a I_(k+1) − b I_(k+2): downward the first term leads, so nothing is lost.
  let i1 = (t * t) / 2 - a * i2 - b * i3;
  let i0 = t - a * i1 - b * i2;
  for (; doublings > 0; doublings -= 1) {
    const c = 1 - b * i1;
    const slope = 1 - a * i0 - b * i1;
    i3 += c * i3 + (i0 + t) * i2 + ((t * t) / 2) * i1;
    i2 += c * i2 + (i0 + t) * i1;
    i1 += c * i1 + i0 * i0;
    i0 *= c + slope;
    t *= 2;
  }
  out[at] = i0;
  out[at + 1] = -(a * i0 + b * i1);
  out[at + 2] = i1;
  out[at + 3] = i2;
  out[at + 4] = i3;
}
