/**
 * The dampers of a design. Dry friction is not among them: the engine has no law for a force that sticks, and a damping
 * ratio cannot stand for it.
 */
import type { DesignSpec } from '../contract/design.ts';
import { type Damper, NO_DAMPER } from './damper.ts';
import { eddyCurrents } from './eddy-currents.ts';
import { gasFilm } from './gas-film.ts';
import { immersed, sliding } from './liquid-damper.ts';
import { fluidOf } from './liquids.ts';
import type { Body } from './proof-mass.ts';

export interface Dampers {
  readonly liquid: Damper;
  readonly gasFilm: Damper;
  readonly eddyCurrents: Damper;
  /** Of the liquid that the mass displaces [kg]. */
  readonly displaced: number;
}

export function dampersOf({ damping }: DesignSpec, body: Body, temperatureK: number): Dampers {
  const { liquid, gasFilm: film, eddyCurrents: eddy } = damping;
  const fluid = liquid && fluidOf(liquid, temperatureK);
  const volume = liquid?.vane ? 0 : (body.volume ?? 0);
  return {
    liquid: !fluid || !liquid ? NO_DAMPER : liquid.vane ? sliding(fluid, liquid.vane) : immersed(fluid, volume),
    gasFilm: film ? gasFilm(film, temperatureK) : NO_DAMPER,
    eddyCurrents: eddy ? eddyCurrents(eddy, temperatureK) : NO_DAMPER,
    displaced: fluid ? fluid.density * volume : 0,
  };
}

/** All of them together. */
export function together({ liquid, gasFilm: film, eddyCurrents: eddy }: Dampers): Damper {
  return {
    damping: (omega) => liquid.damping(omega) + film.damping(omega) + eddy.damping(omega),
    addedMass: (omega) => liquid.addedMass(omega),
    spring: (omega) => film.spring(omega),
  };
}
