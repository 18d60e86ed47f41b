/** What things are made of. One set a theme and a picture; `dispose` frees the maps too. */
import {
  Color,
  DoubleSide,
  type Material,
  MeshBasicMaterial,
  MeshStandardMaterial,
  type MeshStandardMaterialParameters,
  ShadowMaterial,
  type Texture,
} from 'three';
import type { Theme } from '../contract/view.ts';
import { paletteOf } from './palette.ts';
import { bluedSteel, brushedBrass, feltFibres, glassPanes, repeating, upright } from './textures.ts';

/** One of several colours of the same material, so that parts of them make one mesh. */
export interface Tinted {
  readonly material: Material;
  readonly tint: Color;
  /** Undefined: opaque. */
  readonly opacity?: number;
}

export interface Materials {
  /** Polished metals, tinted by vertex. */
  readonly metal: MeshStandardMaterial;
  readonly brass: Tinted;
  readonly brassDark: Tinted;
  readonly mass: Tinted;
  readonly screw: Tinted;
  readonly rod: Tinted;
  readonly nib: Tinted;
  /** What does not shine, tinted by vertex. */
  readonly matt: MeshStandardMaterial;
  readonly iron: Tinted;
  readonly rubber: Tinted;
  readonly wood: Tinted;
  readonly boxwood: Tinted;
  /** Brushed brass of cap, plinth and floor. */
  readonly plate: MeshStandardMaterial;
  readonly blued: MeshStandardMaterial;
  readonly lever: MeshStandardMaterial;
  readonly felt: MeshStandardMaterial;
  readonly back: MeshStandardMaterial;
  readonly glass: MeshBasicMaterial;
  /** Beaker and oil, tinted by vertex with their opacity. */
  readonly glassware: MeshStandardMaterial;
  readonly beaker: Tinted;
  readonly beakerRim: Tinted;
  readonly oil: Tinted;
  readonly line: MeshBasicMaterial;
  readonly veilMass: MeshBasicMaterial;
  readonly veilArm: MeshBasicMaterial;
  readonly veilLever: MeshBasicMaterial;
  readonly arrowInk: MeshBasicMaterial;
  readonly arrowPaper: MeshBasicMaterial;
  readonly arrowLine: MeshBasicMaterial;
  readonly shadow: ShadowMaterial;
  dispose(): void;
}

export function createMaterials(theme: Theme): Materials {
  const palette = paletteOf(theme);
  const evening = theme === 'evening';
  const standard = (parameters: MeshStandardMaterialParameters) => new MeshStandardMaterial(parameters);
  const veil = (color: string, opacity: number) =>
    new MeshBasicMaterial({
      color,
      opacity,
      transparent: true,
      depthWrite: false,
      side: DoubleSide,
      forceSinglePass: true,
    });
  const flat = (color: string, opacity = 1) =>
    new MeshBasicMaterial({
      color,
      opacity,
      transparent: true,
      depthTest: false,
      depthWrite: false,
      toneMapped: false,
      side: DoubleSide,
      forceSinglePass: true,
    });
  const set = {
    metal: standard({
      vertexColors: true,
      map: brushedBrass('#ececec', '#ffffff', '#c4c4c4', 5),
      metalness: 1,
      roughness: 0.3,
    }),
    matt: standard({ vertexColors: true, metalness: 0.15, roughness: 0.6 }),
    plate: standard({ map: brushedBrass('#c8ab6a', '#e4d09c', '#a88c4e', 3), metalness: 0.8, roughness: 0.4 }),
    blued: standard({
      map: bluedSteel(),
      metalness: 0.82,
      roughness: 0.3,
      ...(evening ? { emissive: '#5f86d8', emissiveIntensity: 0.75 } : {}),
    }),
    lever: standard({ color: palette.lever, metalness: 0.6, roughness: 0.38 }),
    felt: standard({
      map: repeating(feltFibres('#567560', '#86a48d', '#324a3b'), 2, 1.4),
      metalness: 0,
      roughness: 1,
    }),
    back: standard({ map: upright(palette.back[0], palette.back[1]), metalness: 0, roughness: 0.75 }),
    glass: new MeshBasicMaterial({
      map: glassPanes(evening),
      transparent: true,
      depthWrite: false,
      toneMapped: false,
      side: DoubleSide,
      forceSinglePass: true,
    }),
    glassware: standard({
      vertexColors: true,
      roughness: 0.15,
      transparent: true,
      depthWrite: false,
      side: DoubleSide,
      forceSinglePass: true,
    }),
    line: new MeshBasicMaterial({
      color: palette.text,
      transparent: true,
      opacity: 0.72,
      depthWrite: false,
      toneMapped: false,
    }),
    veilMass: veil(palette.massFace, 0.42),
    veilArm: veil(palette.steel, 0.34),
    veilLever: veil(palette.lever, 0.3),
    arrowInk: flat(palette.ink),
    arrowPaper: flat(palette.paper),
    arrowLine: flat(palette.text),
    shadow: new ShadowMaterial({ opacity: evening ? 0.62 : 0.34, depthWrite: false }),
  };
  const metal = (color: string): Tinted => ({ material: set.metal, tint: new Color(color) });
  const matt = (color: string): Tinted => ({ material: set.matt, tint: new Color(color) });
  const glassware = (color: string, opacity: number): Tinted => ({
    material: set.glassware,
    tint: new Color(color),
    opacity,
  });
  return {
    ...set,
    beaker: glassware('#e9f4ee', evening ? 0.07 : 0.1),
    beakerRim: glassware('#bfd6cc', 0.5),
    oil: glassware(evening ? '#e8a040' : '#d39a35', evening ? 0.4 : 0.3),
    brass: metal('#cbb074'),
    brassDark: metal('#957b48'),
    mass: metal('#dcbc6c'),
    screw: metal('#4a5f9e'),
    rod: metal('#b9bab8'),
    nib: metal(evening ? '#c9c6be' : '#34322f'),
    iron: matt('#35332f'),
    rubber: matt('#6b2f2a'),
    wood: matt('#5a3420'),
    boxwood: matt('#c9b98f'),
    dispose() {
      for (const material of Object.values(set)) disposeMaterial(material);
    },
  };
}

function disposeMaterial(material: Material & { map?: Texture | null }): void {
  material.map?.dispose();
  material.dispose();
}
