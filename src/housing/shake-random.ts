/**
 * Shaken at random: 1024 sines of random phase, equally spaced over the band, each with the acceleration amplitude
 * √(2·density·Δf), so that the mean square is density times bandwidth in every run (spectral representation with
 * fixed amplitudes; S. O. Rice, "Mathematical Analysis of Random Noise", Bell System Technical Journal 23 (1944),
 * section 1.7, from memory). The sines sit at the middles of 1024 equal bins; the pattern therefore
 * repeats (up to its phase) after 1/Δf = 1024/bandwidth seconds.
 *     s = S(t/ease)·D(t),  D = −Σ (a/Ωⱼ²) sin(Ωⱼt + θⱼ)
 */
import type { RandomShake } from '../contract/motion.ts';
import { smoothstep, smoothstepCurvature, smoothstepSlope } from '../numerics/smoothstep.ts';
import { cos, sin } from '../numerics/transcendental.ts';
import { BRAKE_WITHIN_S } from './brake.ts';
import type { HandOver } from './law.ts';
import { phase } from './phase.ts';
import { Prescribed, unit } from './prescribed.ts';
import type { ScalarLaw } from './scalar-law.ts';

export const SINES = 1024;
const LANES = 4;
/** The sums of the instants asked for last are kept: a tick's end is the next tick's start. */
const KEPT = 4;

export class EasedRandom implements ScalarLaw {
  value = 0;
  rate = 0;
  acceleration = 0;
  readonly steadyAfterS = Number.POSITIVE_INFINITY;
  readonly #easeS: number;
  readonly #firstOmega: number;
  readonly #stepOmega: number;
  /** Coefficients of Σ cⱼ zʲ: amplitude over Ω⁰, Ω¹, Ω², real and imaginary parts. */
  readonly #real = [new Float64Array(SINES), new Float64Array(SINES), new Float64Array(SINES)] as const;
  readonly #imaginary = [new Float64Array(SINES), new Float64Array(SINES), new Float64Array(SINES)] as const;
  /** Kept sums: time, D″, D′, D, and whether the latter two were asked for. */
  readonly #keptTimeS = new Float64Array(KEPT).fill(Number.NaN);
  readonly #keptSums = new Float64Array(3 * KEPT);
  readonly #keptPath = new Uint8Array(KEPT);
  #nextKept = 0;
  /** Powers z … z⁴ of e^{iΔΩt} and e^{iΩ₀t} at the present instant. */
  readonly #powers = new Float64Array(2 * (LANES + 1));
  readonly #sum = new Float64Array(2);

  constructor(
    motion: Pick<RandomShake, 'density' | 'fromFrequency' | 'toFrequency' | 'ease'>,
    seed: number,
    startS: number,
  ) {
    const stepHz = (motion.toFrequency - motion.fromFrequency) / SINES;
    const amplitude = Math.sqrt(2 * motion.density * stepHz);
    this.#easeS = motion.ease;
    this.#stepOmega = 2 * Math.PI * stepHz;
    this.#firstOmega = 2 * Math.PI * (motion.fromFrequency + stepHz / 2);
    for (let j = 0; j < SINES; j++) {
      const omega = this.#firstOmega + j * this.#stepOmega;
      const theta = phase(seed, startS, j);
      const re = amplitude * cos(theta);
      const im = amplitude * sin(theta);
      this.#real[0][j] = re;
      this.#imaginary[0][j] = im;
      this.#real[1][j] = re / omega;
      this.#imaginary[1][j] = im / omega;
      this.#real[2][j] = re / (omega * omega);
      this.#imaginary[2][j] = im / (omega * omega);
    }
  }

  nextKnotS(afterS: number): number {
    return this.#easeS > afterS ? this.#easeS : Number.POSITIVE_INFINITY;
  }

  at(timeS: number, sideS: number, path: boolean): void {
    const easing = sideS < this.#easeS;
    const kept = this.#sums(timeS, path || easing);
    const d2 = this.#keptSums[3 * kept]!;
    const d1 = this.#keptSums[3 * kept + 1]!;
    const d = this.#keptSums[3 * kept + 2]!;
    if (!easing) {
      this.value = d;
      this.rate = d1;
      this.acceleration = d2;
      return;
    }
    const u = timeS / this.#easeS;
    const ease = smoothstep(u);
    const slope = smoothstepSlope(u) / this.#easeS;
    const curvature = smoothstepCurvature(u) / (this.#easeS * this.#easeS);
    this.value = ease * d;
    this.rate = slope * d + ease * d1;
    this.acceleration = curvature * d + 2 * slope * d1 + ease * d2;
  }

  #sums(timeS: number, path: boolean): number {
    for (let i = 0; i < KEPT; i++) {
      if (this.#keptTimeS[i] === timeS && (!path || this.#keptPath[i] === 1)) return i;
    }
    const kept = this.#nextKept;
    this.#nextKept = (kept + 1) % KEPT;
    this.#keptTimeS[kept] = timeS;
    this.#keptPath[kept] = path ? 1 : 0;
    this.#setPowers(timeS);
    // Σ(a/Ωᵏ) e^{i(Ωt+θ)}: D″ = Im₀, D′ = −Re₁, D = −Im₂
    this.#horner(0);
    this.#keptSums[3 * kept] = this.#sum[1]!;
    if (path) {
      this.#horner(1);
      this.#keptSums[3 * kept + 1] = -this.#sum[0]!;
      this.#horner(2);
      this.#keptSums[3 * kept + 2] = -this.#sum[1]!;
    }
    return kept;
  }

  #setPowers(timeS: number): void {
    const powers = this.#powers;
    const step = this.#stepOmega * timeS;
    for (let lane = 0; lane < LANES; lane++) {
      powers[2 * lane] = cos((lane + 1) * step);
      powers[2 * lane + 1] = sin((lane + 1) * step);
    }
    powers[2 * LANES] = cos(this.#firstOmega * timeS);
    powers[2 * LANES + 1] = sin(this.#firstOmega * timeS);
  }

  /**
   * Horner's scheme in z⁴, four interleaved polynomials so that one need not wait for the other:
   * Σ cⱼzʲ = P₀(z⁴) + z P₁(z⁴) + z² P₂(z⁴) + z³ P₃(z⁴). |z| = 1, so rounding grows with the number of terms only.
   */
  #horner(power: 0 | 1 | 2): void {
    const re = this.#real[power];
    const im = this.#imaginary[power];
    const p = this.#powers;
    const zr = p[6]!;
    const zi = p[7]!;
    let ar = 0;
    let ai = 0;
    let br = 0;
    let bi = 0;
    let cr = 0;
    let ci = 0;
    let dr = 0;
    let di = 0;
    for (let j = SINES - LANES; j >= 0; j -= LANES) {
      const nextA = ar * zr - ai * zi + re[j]!;
      ai = ar * zi + ai * zr + im[j]!;
      ar = nextA;
      const nextB = br * zr - bi * zi + re[j + 1]!;
      bi = br * zi + bi * zr + im[j + 1]!;
      br = nextB;
      const nextC = cr * zr - ci * zi + re[j + 2]!;
      ci = cr * zi + ci * zr + im[j + 2]!;
      cr = nextC;
      const nextD = dr * zr - di * zi + re[j + 3]!;
      di = dr * zi + di * zr + im[j + 3]!;
      dr = nextD;
    }
    const real = ar + (br * p[0]! - bi * p[1]!) + (cr * p[2]! - ci * p[3]!) + (dr * p[4]! - di * p[5]!);
    const imaginary = ai + (br * p[1]! + bi * p[0]!) + (cr * p[3]! + ci * p[2]!) + (dr * p[5]! + di * p[4]!);
    const fr = p[8]!;
    const fi = p[9]!;
    this.#sum[0] = real * fr - imaginary * fi;
    this.#sum[1] = real * fi + imaginary * fr;
  }
}

export function randomShake(motion: RandomShake, from: HandOver, seed: number): Prescribed {
  return new Prescribed('shake', from, {
    brakeWithinS: BRAKE_WITHIN_S,
    along: [{ axis: unit(motion.axis), law: new EasedRandom(motion, seed, from.timeS) }],
  });
}
