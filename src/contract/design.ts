/**
 * An element by what a person could build: mass, suspension, damping. SI units (m, kg, Pa, T, K, N, s).
 * The room `design` makes the numbers of an element of it.
 */

/** Materials with values of their own in the table of the room `design`. */
export type MaterialName =
  | 'spring steel'
  | 'brass'
  | 'aluminium'
  | 'copper'
  | 'acrylic'
  | 'birch'
  | 'silicon 110'
  | 'silicon 100';

export interface MaterialSpec {
  /** Young's modulus along the arm [Pa]. */
  readonly youngsModulus: number;
  /** [kg/m³] */
  readonly density: number;
  /** Stress in bending at which it yields or breaks [Pa]. */
  readonly strength: number;
  /** [Pa] */
  readonly shearModulus: number;
  /** Share of the energy of a swing lost in it, over 2π [–]; twice the damping ratio that it gives. */
  readonly lossFactor: number;
  /** At 20 °C [S/m]; undefined: no conductor. */
  readonly conductivity?: number | undefined;
  /** Rise of the resistance with temperature, as a share of that at 20 °C [1/K]. */
  readonly resistanceRise?: number | undefined;
}

export type Material = MaterialName | MaterialSpec;

export interface ProofMassSpec {
  /** [kg]; or worked out from material and size. */
  readonly mass?: number | undefined;
  readonly material?: Material | undefined;
  /** Edges of a block: along the arm, across it, in the sensing direction [m]. */
  readonly size?: readonly [number, number, number] | undefined;
  /** Diameter of a ball [m]. */
  readonly diameter?: number | undefined;
}

/** Helical spring along the input axis. */
export interface CoilSpec {
  readonly kind: 'coil';
  readonly material: Material;
  /** Diameter of the wire [m]. */
  readonly wire: number;
  /** Mean diameter of the coil, from the middle of the wire to the middle of the wire [m]. */
  readonly diameter: number;
  /** Turns that move [–]. */
  readonly turns: number;
  /** Length without load [m]; undefined: not looked at. */
  readonly freeLength?: number | undefined;
}

interface StripSpec {
  readonly material: Material;
  /** Free length [m]. */
  readonly length: number;
  /** Across the bending [m]. */
  readonly width: number;
  /** In the direction of bending [m]. */
  readonly thickness: number;
}

/** Arm clamped at one end, mass at the other. */
export interface ArmSpec extends StripSpec {
  readonly kind: 'arm';
  /** From the end of the arm to the centre of the mass [m]. */
  readonly beyondEnd: number;
  /** How the arm lies to gravity: across it, hanging down from its clamp or standing up on it. */
  readonly posture: 'level' | 'hanging' | 'standing';
}

/** Arm clamped at both ends, mass in the middle; `length` is the sum of both free halves. */
export interface ClampedArmSpec extends StripSpec {
  readonly kind: 'clamped arm';
}

/** Four folds of two parallel beams each; `length` is that of one beam. */
export interface FoldedBeamsSpec extends StripSpec {
  readonly kind: 'folded beams';
  /** Mass of all the links that join the beams of the folds [kg]. */
  readonly linkMass: number;
}

export type SuspensionSpec = CoilSpec | ArmSpec | ClampedArmSpec | FoldedBeamsSpec;

export type LiquidName = 'water' | 'glycerol' | 'silicone oil' | 'castor oil' | 'olive oil';

/** The mass in a liquid, or a vane on it that slides in a slot of liquid. */
export interface LiquidSpec {
  readonly liquid: LiquidName;
  /** Glycerol: its share of the mass, the rest is water [–]. */
  readonly share: number;
  /** Silicone oil: nominal kinematic viscosity at 25 °C [m²/s]. */
  readonly nominalViscosity: number;
  /** Undefined: the whole mass is immersed. */
  readonly vane?: SlidingSpec | undefined;
}

/** A plate that moves in its own plane beside a wall. */
export interface SlidingSpec {
  /** One face [m²]. */
  readonly area: number;
  /** To the wall [m]. */
  readonly gap: number;
  /** Equal gaps side by side: a plate between two walls has two [–]. */
  readonly count: number;
}

/** A plate that moves towards a wall; the gas between them is squeezed out. */
export interface GasFilmSpec {
  /** Edges of the plate [m]. */
  readonly plate: readonly [number, number];
  /** To the wall, unloaded [m]. */
  readonly gap: number;
  /** Equal films side by side: a plate between two walls has two, a comb as many as fingers [–]. */
  readonly count: number;
  /** [Pa] */
  readonly pressure: number;
}

/** A conducting plate that moves across a field. */
export interface EddyCurrentSpec {
  readonly material: Material;
  /** Of the plate [m]. */
  readonly thickness: number;
  /** Of the plate within the field [m²]. */
  readonly area: number;
  /** Flux density at the plate [T]; or worked out from the magnets. */
  readonly field?: number | undefined;
  /** Two equal round magnets that face each other across the plate. */
  readonly magnets?: { readonly remanence: number; readonly diameter: number; readonly length: number } | undefined;
  /** Between the poles [m]. */
  readonly gap: number;
  /** Fitted factor for the way back of the currents, 0 … 1 [–]. */
  readonly fittedFactor: number;
}

export interface DampingSpec {
  readonly liquid?: LiquidSpec | undefined;
  readonly gasFilm?: GasFilmSpec | undefined;
  readonly eddyCurrents?: EddyCurrentSpec | undefined;
}

export interface DesignSpec {
  readonly proofMass: ProofMassSpec;
  readonly suspension: SuspensionSpec;
  readonly damping: DampingSpec;
}

/** What a design is judged in. */
export interface DesignConditions {
  /** [m/s²] */
  readonly gravity: number;
  /** [K] */
  readonly temperature: number;
  /** Distance of the stops [m]; undefined: none. */
  readonly gap?: number | undefined;
  /** Room inside the housing: its longest edge, and its extent in the sensing direction [m]; undefined: not looked at. */
  readonly room?: { readonly longest: number; readonly sensing: number } | undefined;
}

/** What cannot be built: where in the design, what was found there, what is allowed. */
export interface DesignFault {
  readonly path: string;
  readonly found: string;
  readonly allowed: string;
}

/** A limit of the model or of common practice that the design comes near. */
export interface DesignWarning {
  readonly path: string;
  readonly words: string;
}

export interface DesignFigures {
  /** First mode, undamped, with added mass, gas spring and the pull of gravity [Hz]. */
  readonly naturalFrequency: number;
  readonly dampingRatio: number;
  /** 1/2ζ. */
  readonly qualityFactor: number;
  /** What hangs on the suspension [kg]. */
  readonly proofMass: number;
  /** Of the arm, beams or spring [kg]. */
  readonly suspensionMass: number;
  /** Force on the mass over its deflection [N/m]. */
  readonly stiffness: number;
  /** Static deflection of the mass under 1 g_n across the arm [m]. */
  readonly sagPerG: number;
  /** Turn of the mass under 1 g_n [rad]: so much of a force along the arm is felt too. */
  readonly turnPerG: number;
  /** At the clamp (in the wire) under 1 g_n [Pa]. */
  readonly stressPerG: number;
  /** With the mass held at a stop [Pa]; undefined: no stops. */
  readonly stressAtStops: number | undefined;
  /** Stress at which the material yields or breaks there [Pa]. */
  readonly strength: number;
  /** Steady specific force that brings the mass to its stop [g_n]; undefined: no stops. */
  readonly range: number | undefined;
  /** Frequency by the shortcut of an arm (or spring) without mass [Hz], and its error as a share. */
  readonly masslessFrequency: number;
  readonly masslessError: number;
  /** First frequency with the arm hanging and standing under the given gravity [Hz]; 0: a standing arm falls over. */
  readonly hangingFrequency: number;
  readonly standingFrequency: number;
  /** What each damper adds to the damping ratio of the first mode [–]. */
  readonly dampingShares: {
    readonly material: number;
    readonly liquid: number;
    readonly gasFilm: number;
    readonly eddyCurrents: number;
  };
  /** Liquid that moves along [kg]; liquid displaced [kg]. */
  readonly addedMass: number;
  readonly displacedMass: number;
  /** Spring of the gas film at the first frequency [N/m]; under steady forces the gas has time to leave. */
  readonly gasStiffness: number;
  /** Thermal noise as specific force, one-sided, well below the first frequency [g_n/√Hz]. */
  readonly noiseDensity: number;
  /** Thermal deflection of the mass, root of the mean square [m]. */
  readonly thermalDeflection: number;
}

/** Drawn lines: equal steps from the clamp to the end of the arm (clamped arm: to the other clamp). */
export interface DesignShapes {
  /** Static line, 1 at the mass. */
  readonly sag: readonly number[];
  /** Of each mode, per unit of its coordinate: the mass moves by the mode's `shape`. */
  readonly modes: readonly (readonly number[])[];
}
