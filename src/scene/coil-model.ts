/** The coil spring: a round wire wound upright, drawn out and pressed together between its two ends. */
import { BufferAttribute, BufferGeometry, type Material, Mesh } from 'three';

const TURNS = 8;
const STEPS = 20 * TURNS;
const SIDES = 7;

export class CoilModel {
  readonly mesh: Mesh;
  readonly #position: Float32Array;
  readonly #normal: Float32Array;
  readonly #geometry = new BufferGeometry();
  readonly #x: number;
  readonly #z: number;
  readonly #top: number;
  readonly #radius: number;
  readonly #wire: number;
  /** cos and sin of each step's turn, share of the full radius there, and of the height; then of the wire's sides. */
  readonly #cos = new Float64Array(STEPS + 1);
  readonly #sin = new Float64Array(STEPS + 1);
  readonly #width = new Float64Array(STEPS + 1);
  readonly #height = new Float64Array(STEPS + 1);
  readonly #sideCos = new Float64Array(SIDES + 1);
  readonly #sideSin = new Float64Array(SIDES + 1);

  constructor(material: Material, x: number, z: number, top: number, radius: number, wire: number) {
    this.#x = x;
    this.#z = z;
    this.#top = top;
    this.#radius = radius;
    this.#wire = wire;
    for (let step = 0; step <= STEPS; step++) {
      const share = step / STEPS;
      const turn = share * TURNS * 2 * Math.PI;
      this.#cos[step] = Math.cos(turn);
      this.#sin[step] = Math.sin(turn);
      // Both ends run in to the axis over half a turn, as hooks.
      const edge = Math.min(1, Math.min(share, 1 - share) * TURNS * 2);
      this.#width[step] = edge * edge * (3 - 2 * edge);
      this.#height[step] = share;
    }
    for (let side = 0; side <= SIDES; side++) {
      this.#sideCos[side] = Math.cos((side / SIDES) * 2 * Math.PI);
      this.#sideSin[side] = Math.sin((side / SIDES) * 2 * Math.PI);
    }
    const points = (STEPS + 1) * (SIDES + 1);
    this.#position = new Float32Array(points * 3);
    this.#normal = new Float32Array(points * 3);
    const uv = new Float32Array(points * 2);
    const index: number[] = [];
    for (let step = 0; step <= STEPS; step++) {
      for (let side = 0; side <= SIDES; side++) {
        const point = step * (SIDES + 1) + side;
        uv[point * 2] = (0.7 * step) / STEPS;
        uv[point * 2 + 1] = side / SIDES;
        if (step === STEPS || side === SIDES) continue;
        const below = point + SIDES + 1;
        index.push(point, point + 1, below, point + 1, below + 1, below);
      }
    }
    this.#geometry.setAttribute('position', new BufferAttribute(this.#position, 3));
    this.#geometry.setAttribute('normal', new BufferAttribute(this.#normal, 3));
    this.#geometry.setAttribute('uv', new BufferAttribute(uv, 2));
    this.#geometry.setIndex(index);
    this.mesh = new Mesh(this.#geometry, material);
    this.mesh.castShadow = this.mesh.receiveShadow = true;
    this.mesh.frustumCulled = false;
  }

  /** Puts the lower end at height `bottom`. */
  stretch(bottom: number): void {
    const length = this.#top - bottom;
    let at = 0;
    for (let step = 0; step <= STEPS; step++) {
      const cos = this.#cos[step]!;
      const sin = this.#sin[step]!;
      const radius = this.#radius * this.#width[step]!;
      const x = this.#x + radius * cos;
      const z = this.#z + radius * sin;
      const y = this.#top - length * this.#height[step]!;
      for (let side = 0; side <= SIDES; side++) {
        // The wire's section is taken in the upright plane through the axis: true for a flat winding.
        const out = this.#sideCos[side]!;
        const up = this.#sideSin[side]!;
        this.#normal[at] = cos * out;
        this.#normal[at + 1] = up;
        this.#normal[at + 2] = sin * out;
        this.#position[at] = x + this.#wire * cos * out;
        this.#position[at + 1] = y + this.#wire * up;
        this.#position[at + 2] = z + this.#wire * sin * out;
        at += 3;
      }
    }
    this.#geometry.getAttribute('position').needsUpdate = true;
    this.#geometry.getAttribute('normal').needsUpdate = true;
  }
}
