/** What happened, at its exact instant [s of run time], with its values (SI). */
export type RunEvent =
  | { readonly kind: 'motion'; readonly timeS: number; readonly motion: string }
  | LetGoEvent
  | TouchEvent
  | LiftOffEvent
  | RestEvent
  | StopEvent
  | ChangeEvent;

/** The housing became free. */
export interface LetGoEvent {
  readonly kind: 'let go';
  readonly timeS: number;
  /** Height of the lowest point above the unloaded pad [m]. */
  readonly heightM: number;
  /** Vertical speed of the centre of mass, upward positive [m/s]. */
  readonly verticalSpeedMS: number;
}

/** The first corner met the pad. */
export interface TouchEvent {
  readonly kind: 'touch';
  readonly timeS: number;
  readonly verticalSpeedMS: number;
  /** Time since the housing became free or last lifted off [s]. */
  readonly fallS: number;
}

/** One contact with the pad, from touch to lift-off or rest. */
export interface Landing {
  readonly touchS: number;
  /** Time in contact so far [s]. */
  readonly contactS: number;
  /** Largest specific force felt at the centre of mass, magnitude [m/s²], and its instant. */
  readonly peakMS2: number;
  readonly peakS: number;
  /** ∫(felt − g)dt over the contact, vertical [m/s]: the change of vertical velocity. */
  readonly areaMS: number;
  /** Deepest the lowest corner went below the unloaded pad [m]. */
  readonly depthM: number;
}

/** The last corner came free. */
export interface LiftOffEvent {
  readonly kind: 'lift-off';
  readonly timeS: number;
  readonly verticalSpeedMS: number;
  readonly landing: Landing;
}

/** The housing came to rest on the pad. */
export interface RestEvent {
  readonly kind: 'at rest';
  readonly timeS: number;
  readonly landing: Landing;
}

/** A proof mass met one of its stops. */
export interface StopEvent {
  readonly kind: 'stop hit';
  readonly timeS: number;
  readonly element: string;
  /** +1: the stop at x = +gap, −1: the one at −gap. */
  readonly side: 1 | -1;
  /** Speed into the stop [m/s]. */
  readonly speedMS: number;
  /** It stays on the stop. */
  readonly rests: boolean;
}

/** A setting was changed. */
export interface ChangeEvent {
  readonly kind: 'change';
  readonly timeS: number;
  readonly what: string;
}
