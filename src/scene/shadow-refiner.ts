/**
 * One frame a drawing while things move; while they stand still, drawings with the light moved over a
 * small disc are averaged, so that shadows grow soft edges. The average is taken of what the screen
 * would show, so nothing but the shadows changes.
 */
import {
  AddEquation,
  type Camera,
  CustomBlending,
  type DirectionalLight,
  FramebufferTexture,
  HalfFloatType,
  Mesh,
  NoBlending,
  OneFactor,
  OrthographicCamera,
  PlaneGeometry,
  type Scene,
  ShaderMaterial,
  Vector3,
  type WebGLRenderer,
  WebGLRenderTarget,
} from 'three';

const GOLDEN_ANGLE = Math.PI * (3 - Math.sqrt(5));

const VERTEX = 'varying vec2 at; void main() { at = uv; gl_Position = vec4(position.xy, 0.0, 1.0); }';
const FRAGMENT =
  'uniform sampler2D picture; uniform float weight; varying vec2 at; void main() { gl_FragColor = texture2D(picture, at) * weight; }';

export interface RefinerSettings {
  readonly shadows: boolean;
  /** Drawings averaged when still. */
  readonly steps: number;
  /** Radius of the disc that the light moves over, against its unit direction [–]. */
  readonly spread: number;
}

export class ShadowRefiner {
  readonly #renderer: WebGLRenderer;
  readonly #settings: RefinerSettings;
  readonly #sum = new WebGLRenderTarget(1, 1, { type: HalfFloatType, depthBuffer: false });
  #frame = new FramebufferTexture(1, 1);
  readonly #quad: Mesh;
  readonly #camera = new OrthographicCamera(-1, 1, 1, -1, 0, 1);
  readonly #add: ShaderMaterial;
  readonly #show: ShaderMaterial;
  readonly #direction = new Vector3();
  readonly #sideways = new Vector3();
  readonly #upward = new Vector3();
  #done = 0;

  constructor(renderer: WebGLRenderer, settings: RefinerSettings) {
    this.#renderer = renderer;
    this.#settings = settings;
    const shader = (blending: typeof NoBlending | typeof CustomBlending) =>
      new ShaderMaterial({
        vertexShader: VERTEX,
        fragmentShader: FRAGMENT,
        uniforms: { picture: { value: null }, weight: { value: 1 } },
        depthTest: false,
        depthWrite: false,
        blending,
        blendEquation: AddEquation,
        blendSrc: OneFactor,
        blendDst: OneFactor,
        toneMapped: false,
      });
    this.#add = shader(CustomBlending);
    this.#show = shader(NoBlending);
    this.#quad = new Mesh(new PlaneGeometry(2, 2), this.#add);
    this.#quad.frustumCulled = false;
  }

  get settled(): boolean {
    return !this.#settings.shadows || this.#done >= this.#settings.steps;
  }

  resize(width: number, height: number): void {
    this.#sum.setSize(width, height);
    this.#frame.dispose();
    this.#frame = new FramebufferTexture(width, height);
    this.#done = 0;
  }

  /** Draws a changed scene. `toLight` is the unit direction to the light, which stands `distance` away from its target. */
  draw(scene: Scene, camera: Camera, light: DirectionalLight, toLight: Vector3, distance: number): void {
    this.#done = 0;
    this.#aim(light, toLight, distance, 0);
    this.#render(scene, camera);
  }

  /** Draws the same scene once more, from another place of the light, and shows the average. */
  refine(scene: Scene, camera: Camera, light: DirectionalLight, toLight: Vector3, distance: number): void {
    if (this.settled) return;
    this.#aim(light, toLight, distance, this.#done);
    this.#render(scene, camera);
    this.#take();
    this.#show.uniforms.picture!.value = this.#sum.texture;
    this.#show.uniforms.weight!.value = 1 / this.#done;
    this.#quad.material = this.#show;
    this.#renderer.render(this.#quad, this.#camera);
  }

  dispose(): void {
    this.#sum.dispose();
    this.#frame.dispose();
    this.#add.dispose();
    this.#show.dispose();
    this.#quad.geometry.dispose();
  }

  #render(scene: Scene, camera: Camera): void {
    this.#renderer.shadowMap.needsUpdate = this.#settings.shadows;
    this.#renderer.render(scene, camera);
  }

  /** Adds what was just drawn to the sum; the first clears it. */
  #take(): void {
    const renderer = this.#renderer;
    renderer.copyFramebufferToTexture(this.#frame);
    this.#add.uniforms.picture!.value = this.#frame;
    this.#quad.material = this.#add;
    renderer.setRenderTarget(this.#sum);
    renderer.autoClear = this.#done === 0;
    renderer.render(this.#quad, this.#camera);
    renderer.autoClear = true;
    renderer.setRenderTarget(null);
    this.#done++;
  }

  /** Place `step` of an evenly filled disc: its middle first (a sunflower's spiral). */
  #aim(light: DirectionalLight, toLight: Vector3, distance: number, step: number): void {
    const radius = this.#settings.spread * Math.sqrt(step / this.#settings.steps);
    const turn = step * GOLDEN_ANGLE;
    this.#sideways.set(toLight.z, 0, -toLight.x).normalize();
    this.#upward.crossVectors(toLight, this.#sideways);
    this.#direction
      .copy(toLight)
      .addScaledVector(this.#sideways, radius * Math.cos(turn))
      .addScaledVector(this.#upward, radius * Math.sin(turn));
    light.position.copy(light.target.position).addScaledVector(this.#direction, distance);
  }
}
