/** Renderer, light and mirrored room that both pictures in depth share. */
import {
  DirectionalLight,
  HemisphereLight,
  NeutralToneMapping,
  Scene,
  SRGBColorSpace,
  Vector3,
  WebGLRenderer,
  type WebGLRenderTarget,
} from 'three';
import type { Theme } from '../contract/view.ts';
import { mirroredRoom } from './environment.ts';
import { createMaterials, type Materials } from './materials.ts';
import { ShadowRefiner } from './shadow-refiner.ts';

export interface PictureOptions {
  readonly theme?: Theme;
  /** One light's shadows; off for measuring and for slow machines. Default true. */
  readonly shadows?: boolean;
  /** Default true. */
  readonly antialias?: boolean;
  /** What brass and glass mirror; off for measuring. Default true. */
  readonly mirror?: boolean;
  /** Edge of the shadow map in texels. Default 1024. */
  readonly shadowMapSize?: number;
  /** Drawings averaged for soft shadows when still. Default 16. */
  readonly refineSteps?: number;
  /** The graphics context is gone: take the flat drawing instead. */
  readonly onLost?: () => void;
}

/** One theme's lamp: unit direction to it, colours, strengths. */
export interface LightPlan {
  readonly toLight: readonly [number, number, number];
  readonly color: string;
  readonly strength: number;
  readonly sky: string;
  readonly ground: string;
  readonly ambient: number;
  readonly mirrored: number;
}

export class ThreeStage {
  readonly renderer: WebGLRenderer;
  readonly scene = new Scene();
  readonly lamp = new DirectionalLight();
  readonly refiner: ShadowRefiner;
  readonly toLight = new Vector3();
  materials: Materials;
  theme: Theme;
  /** From the light's target to the light. */
  lightDistance = 1;
  readonly #ambient = new HemisphereLight();
  readonly #plans: Readonly<Record<Theme, LightPlan>>;
  readonly #canvas: HTMLCanvasElement;
  readonly #onLost: (() => void) | undefined;
  readonly #mirrors: boolean;
  #mirror: WebGLRenderTarget | undefined;

  constructor(canvas: HTMLCanvasElement, options: PictureOptions, plans: Readonly<Record<Theme, LightPlan>>) {
    this.#canvas = canvas;
    this.#plans = plans;
    this.#onLost = options.onLost;
    this.renderer = new WebGLRenderer({ canvas, alpha: true, antialias: options.antialias ?? true });
    this.renderer.setClearColor(0x000000, 0);
    this.renderer.toneMapping = NeutralToneMapping;
    this.renderer.outputColorSpace = SRGBColorSpace;
    const shadows = options.shadows ?? true;
    this.renderer.shadowMap.enabled = shadows;
    this.renderer.shadowMap.autoUpdate = false;
    this.refiner = new ShadowRefiner(this.renderer, { shadows, steps: options.refineSteps ?? 16, spread: 0.1 });
    this.lamp.castShadow = shadows;
    this.lamp.shadow.mapSize.setScalar(options.shadowMapSize ?? 1024);
    this.scene.add(this.lamp, this.lamp.target, this.#ambient);
    this.theme = options.theme ?? 'day';
    this.materials = createMaterials(this.theme);
    this.#mirrors = options.mirror ?? true;
    this.#applyPlan();
    canvas.addEventListener('webglcontextlost', this.#lost);
  }

  /** Makes materials and lights anew; the caller rebuilds what uses them. */
  setTheme(theme: Theme): void {
    this.theme = theme;
    this.materials.dispose();
    this.materials = createMaterials(theme);
    this.#mirror?.dispose();
    this.#applyPlan();
  }

  resize(widthPx: number, heightPx: number, pixelRatio: number): void {
    this.renderer.setPixelRatio(pixelRatio);
    this.renderer.setSize(widthPx, heightPx, false);
    this.refiner.resize(this.renderer.domElement.width, this.renderer.domElement.height);
  }

  dispose(): void {
    this.#canvas.removeEventListener('webglcontextlost', this.#lost);
    this.refiner.dispose();
    this.materials.dispose();
    this.#mirror?.dispose();
    this.lamp.dispose();
    this.renderer.dispose();
  }

  readonly #lost = (): void => this.#onLost?.();

  #applyPlan(): void {
    const plan = this.#plans[this.theme];
    this.toLight.fromArray(plan.toLight).normalize();
    this.lamp.color.set(plan.color);
    this.lamp.intensity = plan.strength;
    this.#ambient.color.set(plan.sky);
    this.#ambient.groundColor.set(plan.ground);
    this.#ambient.intensity = plan.ambient;
    this.#mirror = this.#mirrors ? mirroredRoom(this.renderer, this.theme) : undefined;
    this.scene.environment = this.#mirror?.texture ?? null;
    this.scene.environmentIntensity = plan.mirrored;
  }
}

/** Whether the browser grants a graphics context: asked on a scratch canvas, so that a refusal says nothing on the console. */
export function graphicsAvailable(): boolean {
  const context = document.createElement('canvas').getContext('webgl2');
  context?.getExtension('WEBGL_lose_context')?.loseContext();
  return context !== null;
}
