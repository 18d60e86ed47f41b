/** Records made by a formula, for recorded motions. */

/** A smooth law of time and its second derivative. */
export interface SmoothLaw {
  at(timeS: number): number;
  curvatureAt(timeS: number): number;
}

/**
 * A CSV (columns t, a) of a law over [0, spanS] in `segments` equal straight lines. Straight lines through samples of f amount to
 * f + δ²f″/12 + O(δ⁴) for whatever is slow against their spacing δ (the first-order hold, sinc²(Ωδ/2) ≈ 1 − Ω²δ²/12),
 * so the samples are those of f − δ²f″/12. After the span the law is over: a last value of 0 follows at once.
 */
export function recordFile(law: SmoothLaw, spanS: number, segments: number, unitMS2: number): string {
  const delta = spanS / segments;
  const lines = ['# made by a formula', 't,a'];
  for (let k = 0; k <= segments; k += 1) {
    const t = k * delta;
    lines.push(`${t},${(law.at(t) - (delta * delta * law.curvatureAt(t)) / 12) / unitMS2}`);
  }
  return `${lines.join('\n')}\n`;
}
