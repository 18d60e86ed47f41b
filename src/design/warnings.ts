/** Limits of the model and of common practice that a design comes near. */
import type { DesignFigures, DesignWarning } from '../contract/design.ts';
import type { Worked } from './design.ts';
import { skinDepth } from './eddy-currents.ts';
import { knudsenNumber } from './gas-film.ts';
import { MOST_KNUDSEN } from './gases.ts';
import { ballRadius, LINEAR_REYNOLDS } from './liquid-damper.ts';
import { fluidOf } from './liquids.ts';

type Warn = (path: string, words: string) => void;

/** Share of the strength from which a swinging part is called near it [–]: common practice, for it bends often. */
const NEAR_STRENGTH = 0.5;
/** Turn of the mass from which the cross-axis force is told [rad]: 5 % of it is felt. */
const LARGE_TURN = 0.05;
/** Deflection over length by which the slender beam errs by 1 %. */
const LARGE_DEFLECTION = 0.1;
/**
 * Share by which small deflections go too far, by the deflection over the length: about its square, up to a third
 * (against the exact bend of a loaded cantilever, K. Mattiasson, Int. J. Numer. Meth. Eng. 17 (1981) 145).
 */
export function bendingError(deflection: number): number {
  return deflection * deflection;
}
/** Damping ratio below which ringing takes hundreds of swings [–]. */
const HARDLY_DAMPED = 1e-3;

export function warningsOf(worked: Worked, figures: DesignFigures): DesignWarning[] {
  const warnings: DesignWarning[] = [];
  const warn: Warn = (path, words) => warnings.push({ path, words });
  warnSuspension(worked, figures, warn);
  warnDeflection(worked, figures, warn);
  warnLiquid(worked, figures, warn);
  warnFilm(worked, figures, warn);
  warnEddyCurrents(worked, warn);
  if (figures.dampingRatio === 0) warn('damping', 'Nothing damps it: it rings for ever.');
  else if (figures.dampingRatio < HARDLY_DAMPED)
    warn('damping', `It rings for hundreds of swings: damping ratio ${digits(figures.dampingRatio)}.`);
  return warnings;
}

function warnSuspension({ spec, pull, swinging }: Worked, figures: DesignFigures, warn: Warn): void {
  const { suspension } = spec;
  if (suspension.kind === 'coil') {
    const index = suspension.diameter / suspension.wire;
    if (index < 4 || index > 20)
      warn('suspension.diameter', `Coil over wire is ${digits(index)}; EN 13906-1 takes springs from 4 to 20.`);
  } else {
    const { length, width, thickness } = suspension;
    if (length < 10 * thickness)
      warn('suspension.length', 'Shorter than ten thicknesses: shear makes it softer than reckoned.');
    if (width > length) warn('suspension.width', 'Wider than long: up to a tenth stiffer than reckoned, as a plate.');
    if (width < thickness) warn('suspension.width', 'Thicker than wide: it bends more easily sideways.');
    const change = figures.hangingFrequency / figures.standingFrequency - 1;
    if (pull === 0 && change > 0.02) {
      const range = `${digits(figures.standingFrequency)} Hz standing, ${digits(figures.hangingFrequency)} Hz hanging`;
      warn(
        'suspension.posture',
        `Gravity along the arm changes its frequency: ${range}. A run keeps that of the stated posture.`,
      );
    }
    const [first] = swinging.modes;
    if (Math.abs(pull) * first!.stretch > 0.3 * first!.omega * first!.omega)
      warn(
        'suspension.posture',
        'Gravity along the arm changes its stiffness by over 30 %: reckoned to first order only.',
      );
  }
  const stress = Math.max(
    figures.stressAtStops ?? figures.stressPerG,
    figures.range === undefined ? figures.stressPerG : 0,
  );
  if (stress > NEAR_STRENGTH * figures.strength) {
    const share = Math.round((100 * stress) / figures.strength);
    warn('suspension', `${share} % of the material's strength: it may yield or break. Wear goggles, keep hands clear.`);
  }
}

function warnDeflection({ spec: { suspension }, conditions }: Worked, figures: DesignFigures, warn: Warn): void {
  const { sagPerG, turnPerG, range } = figures;
  if (range !== undefined && range < 1)
    warn('gap', `Standing still it rests on its stop: it sags by ${digits(sagPerG)} m under 1 g.`);
  if (suspension.kind === 'coil') return;
  const most = Math.min(conditions.gap ?? Infinity, Math.max(sagPerG, conditions.gap ?? 0));
  // An arm held at both ends stretches, which is reckoned; folds bend far less than they move.
  if (suspension.kind === 'arm' && most > LARGE_DEFLECTION * suspension.length) {
    const share = most / suspension.length;
    warn(
      'suspension.length',
      `Deflects by ${Math.round(100 * share)} % of its length: reckoned for small deflections, ${digits(100 * bendingError(share))} % too far.`,
    );
  }
  if (turnPerG > LARGE_TURN)
    warn(
      'suspension',
      `Under 1 g the mass turns by ${digits(turnPerG)} rad and feels so much of a force along the arm; a run leaves that out.`,
    );
}

function warnLiquid({ spec, body, conditions }: Worked, figures: DesignFigures, warn: Warn): void {
  const { liquid } = spec.damping;
  if (liquid === undefined) return;
  const path = 'damping.liquid';
  if (liquid.liquid === 'silicone oil' && liquid.nominalViscosity < 5e-5)
    warn(`${path}.nominalViscosity`, 'Change with temperature known for 5e-5 m²/s and more.');
  if (liquid.vane !== undefined) return;
  if (spec.proofMass.diameter === undefined) warn(path, 'Reckoned as a ball of the same volume.');
  const { viscosity, density } = fluidOf(liquid, conditions.temperature);
  const radius = ballRadius(body.volume ?? 0);
  const way = Math.min(figures.sagPerG, conditions.gap ?? Infinity);
  const speed = way * 2 * Math.PI * figures.naturalFrequency * Math.min(1, 1 / (2 * figures.dampingRatio));
  const reynolds = (2 * radius * density * speed) / viscosity;
  if (reynolds > LINEAR_REYNOLDS && way > 0.1 * radius)
    warn(
      path,
      `Let go from 1 g it moves at a Reynolds number of about ${digits(reynolds)}: the drag grows faster than the speed, reckoned straight up to ${LINEAR_REYNOLDS}.`,
    );
}

function warnFilm({ spec, conditions }: Worked, figures: DesignFigures, warn: Warn): void {
  const film = spec.damping.gasFilm;
  if (film === undefined) return;
  const path = 'damping.gasFilm';
  if (film.pressure > 0 && knudsenNumber(film, conditions.temperature) > MOST_KNUDSEN)
    warn(`${path}.pressure`, `Knudsen number above ${MOST_KNUDSEN}: the law of the thin gas is not known to hold.`);
  const way = Math.min(figures.sagPerG, conditions.gap ?? Infinity);
  if (way > 0.1 * film.gap)
    warn(
      `${path}.gap`,
      `Under 1 g the film changes by ${Math.round((100 * way) / film.gap)} %: damping reckoned for small swings about the unloaded gap.`,
    );
  const share = figures.gasStiffness / figures.stiffness;
  if (share > 0.01)
    warn(
      path,
      `The gas is a spring of ${digits(100 * share)} % of the suspension's at the first frequency. It gives way under steady forces; a run keeps it and sags less.`,
    );
}

function warnEddyCurrents({ spec, conditions, modes }: Worked, warn: Warn): void {
  const eddy = spec.damping.eddyCurrents;
  if (eddy === undefined) return;
  const path = 'damping.eddyCurrents';
  if (eddy.thickness > skinDepth(eddy, conditions.temperature, 2 * Math.PI * modes[0]!.naturalFrequency))
    warn(`${path}.thickness`, 'Thicker than the field gets at this frequency: damped less than reckoned.');
  if (eddy.magnets)
    warn(
      `${path}.magnets`,
      'Strong magnets pinch and splinter; keep them from children, from pacemakers and from cards. Heed local rules.',
    );
}

/** Three digits, for people. */
function digits(value: number): string {
  return String(Number(value.toPrecision(3)));
}
