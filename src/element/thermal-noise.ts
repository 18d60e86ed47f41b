/**
 * Thermal noise of the dampers: each pushes with white force of one-sided density 4kTc [N²/Hz] (two-sided 2kTc), c its
 * damping, between the two bodies it joins; then each coordinate keeps the mean energies of equilibrium, ⟨x²⟩ = kT/k
 * for the single mode, at any tick (H. B. Callen, T. A. Welton, Phys. Rev. 83 (1951) 34–40; density as in
 * T. B. Gabrielson, IEEE Trans. Electron Devices 40 (1993) 903–909; both from memory).
 *
 * What a tick adds is drawn from its exact covariance. It is a function of (seed, element, tick), and inside the tick
 * its path is one more function of these and of τ: looking at more or fewer instants changes nothing.
 */
import { BOLTZMANN } from '../numerics/boltzmann.ts';
import { LinearSystem } from '../numerics/linear-system.ts';
import { type DeviateSource, NoiseBridge } from '../numerics/noise-bridge.ts';
import { gaussianPairAt } from '../numerics/random.ts';
import type { Mechanics } from './mechanics.ts';

/** Deviates with this part belong to the start of the run; those of a tick have its nodes, 0 … 31. */
const START_PART = 1024;
/** Streams per element: more pairs of deviates than a state has. */
const STREAMS = 64;

export interface NoiseContext {
  readonly seed: number;
  readonly index: number;
  readonly temperatureK: number;
  readonly tickS: number;
}

/** Coordinates whose noise is drawn together, from `at` in the state. */
interface Block {
  readonly at: number;
  readonly bridge: NoiseBridge;
  readonly increment: Float64Array;
  readonly path: Float64Array;
  readonly source: DeviateSource;
}

export class ThermalNoise {
  readonly #mechanics: Mechanics;
  readonly #context: NoiseContext;
  readonly #blocks: readonly Block[];
  #tick = 0;

  constructor(mechanics: Mechanics, context: NoiseContext) {
    this.#mechanics = mechanics;
    this.#context = context;
    const thermal = BOLTZMANN * context.temperatureK;
    const { mount } = mechanics;
    // A mount that does not feel the element is not moved by its noise: each mode is on its own.
    const systems = mount && mount.massRatio > 0 ? [wholeSystem(mechanics, thermal)] : modeSystems(mechanics, thermal);
    let at = 0;
    this.#blocks = systems.map((system) => {
      const block = this.#block(system, at);
      at += system.size;
      return block;
    });
  }

  /** Draws what the tick adds. */
  beginTick(tick: number): void {
    this.#tick = tick;
    for (const { bridge, source, increment } of this.#blocks) bridge.increment(source, increment);
  }

  /** Adds what the noise has added by τ [s] of the tick. */
  addAt(tauS: number, state: Float64Array): void {
    for (const { at, bridge, source, increment, path } of this.#blocks) {
      bridge.at(tauS, increment, source, path);
      for (let i = 0; i < path.length; i += 1) state[at + i]! += path[i]!;
    }
  }

  /** Adds what the whole tick adds. */
  addTick(state: Float64Array): void {
    for (const { at, increment } of this.#blocks)
      for (let i = 0; i < increment.length; i += 1) state[at + i]! += increment[i]!;
  }

  /** Adds a departure drawn from thermal equilibrium. */
  addEquilibrium(state: Float64Array): void {
    const { omega, modalMass, participation, mount, size } = this.#mechanics;
    const { seed, index, temperatureK } = this.#context;
    const thermal = BOLTZMANN * temperatureK;
    const deviates = new Float64Array(2);
    let mountSpeed = 0;
    if (mount && mount.massRatio > 0) {
      gaussianPairAt(seed, index * STREAMS + omega.length, 0, START_PART, deviates, 0);
      const speed = Math.sqrt(thermal / mountMass(this.#mechanics, mount.massRatio));
      mountSpeed = speed * deviates[1]!;
      state[size - 2]! += (speed / mount.omega) * deviates[0]!;
      state[size - 1]! += mountSpeed;
    }
    for (let n = 0; n < omega.length; n += 1) {
      gaussianPairAt(seed, index * STREAMS + n, 0, START_PART, deviates, 0);
      const speed = Math.sqrt(thermal / modalMass[n]!);
      state[2 * n]! += (speed / omega[n]!) * deviates[0]!;
      // In the room the mass has its own thermal speed; relative to the mount less what the mount has.
      state[2 * n + 1]! += speed * deviates[1]! - participation[n]! * mountSpeed;
    }
  }

  #block(system: LinearSystem, at: number): Block {
    const { seed, index, tickS } = this.#context;
    const source: DeviateSource = (node, out) => {
      for (let i = 0; i < out.length; i += 2)
        gaussianPairAt(seed, index * STREAMS + (at + i) / 2, this.#tick, node, out, i);
    };
    return {
      at,
      bridge: new NoiseBridge(system, tickS),
      increment: new Float64Array(system.size),
      path: new Float64Array(system.size),
      source,
    };
  }
}

function modeSystems(mechanics: Mechanics, thermal: number): LinearSystem[] {
  const { omega, zeta, modalMass } = mechanics;
  return Array.from(omega, (w, n) => {
    const a = Float64Array.of(0, 1, -w * w, -2 * zeta[n]! * w);
    const intensity = Float64Array.of(0, 0, 0, (4 * thermal * zeta[n]! * w) / modalMass[n]!);
    return new LinearSystem(a, [], w * (1 + 2 * zeta[n]!), intensity);
  });
}

/** The modes and the mount together: each damper pushes both ways. */
function wholeSystem(mechanics: Mechanics, thermal: number): LinearSystem {
  const { a, size, rate, omega, zeta, modalMass, participation, mount } = mechanics;
  const { massRatio, omega: mountOmega, zeta: mountZeta } = mount!;
  const baseMass = mountMass(mechanics, massRatio);
  const intensity = new Float64Array(size * size);
  const direction = new Float64Array(size);
  const addDamper = (damping: number): void => {
    for (let row = 0; row < size; row += 1)
      for (let k = 0; k < size; k += 1)
        intensity[row * size + k]! += 2 * thermal * damping * direction[row]! * direction[k]!;
  };
  const turnOn = (mountRate: number): void => {
    for (let n = 0; n < omega.length; n += 1) direction[2 * n + 1] = -participation[n]! * mountRate;
    direction[size - 1] = mountRate;
  };
  for (let n = 0; n < omega.length; n += 1) {
    turnOn(-participation[n]! / baseMass);
    direction[2 * n + 1]! += 1 / modalMass[n]!;
    addDamper(2 * zeta[n]! * omega[n]! * modalMass[n]!);
  }
  turnOn(1 / baseMass);
  addDamper(2 * mountZeta * mountOmega * baseMass);
  return new LinearSystem(a, [], rate, intensity);
}

/** Mass of the mount [kg], from that of the modes it carries. */
function mountMass({ modalMass, participation }: Mechanics, massRatio: number): number {
  const carried = modalMass.reduce((sum, mass, n) => sum + mass * participation[n]! * participation[n]!, 0);
  return carried / massRatio;
}
