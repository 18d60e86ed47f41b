/** What cannot be built, with what was found and what would do. */
import type { DesignConditions, DesignFault, DesignFigures, DesignSpec } from '../contract/design.ts';
import { dampersOf } from './dampers.ts';
import type { Worked } from './design.ts';
import { liquidRange } from './liquids.ts';
import { materialOf } from './materials.ts';
import type { Body } from './proof-mass.ts';

type Report = (path: string, found: string, allowed: string) => void;

/** Before any number is worked out. */
export function buildFaults(spec: DesignSpec, body: Body, conditions: DesignConditions): DesignFault[] {
  const faults: DesignFault[] = [];
  const report: Report = (path, found, allowed) => faults.push({ path, found, allowed });
  checkSuspension(spec, body, conditions, report);
  checkRoom(spec, body, conditions, report);
  checkLiquid(spec, body, conditions, report);
  checkFilm(spec, conditions, report);
  checkEddyCurrents(spec, report);
  return faults;
}

function checkSuspension({ suspension }: DesignSpec, body: Body, { gap }: DesignConditions, report: Report): void {
  if (suspension.kind === 'coil') {
    const { wire, diameter, turns, freeLength } = suspension;
    if (!(diameter > 2 * wire))
      report('suspension.diameter', `${diameter} m`, `above ${2 * wire} m, twice the wire: it could not be wound`);
    // One dead turn at each end (common practice).
    const closed = wire * (turns + 2);
    const least = closed + (gap ?? 0);
    if (freeLength !== undefined && !(freeLength > least)) {
      const words = gap === undefined ? 'its turns touching' : 'its turns touching, and the way to the stop';
      report('suspension.freeLength', `${freeLength} m`, `above ${least} m: ${words}`);
    }
    return;
  }
  const { length, thickness } = suspension;
  if (!(thickness < length)) report('suspension.thickness', `${thickness} m`, `below the length, ${length} m`);
  if (suspension.kind === 'arm') {
    const reach = body.size[0] / 2 - suspension.beyondEnd;
    if (reach > length)
      report(
        'suspension.beyondEnd',
        `a mass that reaches back over ${reach} m of the arm`,
        `at most its length, ${length} m`,
      );
  }
}

function checkRoom(
  { suspension }: DesignSpec,
  { size }: Body,
  { gap = 0, room }: DesignConditions,
  report: Report,
): void {
  if (room === undefined) return;
  const across = size[2] + 2 * gap;
  if (across > room.sensing) {
    const found = `${across} m with its way to both stops`;
    report(
      'proofMass',
      found,
      `at most ${room.sensing} m, the housing in the sensing direction: a smaller mass or gap`,
    );
  }
  const along =
    suspension.kind === 'coil'
      ? size[0]
      : suspension.kind === 'arm'
        ? suspension.length + Math.max(suspension.beyondEnd + size[0] / 2, 0)
        : suspension.kind === 'clamped arm'
          ? suspension.length + size[0]
          : suspension.length;
  if (along > room.longest)
    report('suspension', `${along} m with its mass`, `at most ${room.longest} m, the longest edge of the housing`);
}

function checkLiquid(spec: DesignSpec, body: Body, { temperature }: DesignConditions, report: Report): void {
  const { liquid, gasFilm } = spec.damping;
  if (liquid === undefined) return;
  if (gasFilm !== undefined)
    report('damping', 'a liquid and a gas film', 'one of them: the liquid would fill the film');
  const [least, most] = liquidRange(liquid.liquid);
  if (temperature < least || temperature > most) {
    report(
      'damping.liquid.liquid',
      `${liquid.liquid} at ${temperature} K`,
      `from ${least} to ${most} K, where its values are known`,
    );
    return;
  }
  if (liquid.vane !== undefined) return;
  if (body.volume === undefined) {
    report(
      'proofMass',
      'a mass without size in a liquid',
      'a size, a diameter or a material beside the mass, or a vane',
    );
    return;
  }
  const { displaced } = dampersOf({ ...spec, damping: { liquid } }, body, temperature);
  if (!(displaced < body.mass)) {
    const found = `a mass of ${body.mass} kg that displaces ${displaced} kg of ${liquid.liquid}`;
    report('proofMass', found, 'a mass denser than the liquid: a float goes with the force, not against it');
  }
}

function checkFilm({ damping: { gasFilm } }: DesignSpec, { gap }: DesignConditions, report: Report): void {
  if (gasFilm !== undefined && gap !== undefined && gasFilm.gap < gap)
    report(
      'damping.gasFilm.gap',
      `${gasFilm.gap} m`,
      `at least ${gap} m, the distance of the stops: the plate would hit its wall`,
    );
}

function checkEddyCurrents({ damping: { eddyCurrents } }: DesignSpec, report: Report): void {
  if (eddyCurrents === undefined) return;
  const { material, thickness, gap, field, magnets } = eddyCurrents;
  const path = 'damping.eddyCurrents';
  if (materialOf(material).conductivity === undefined)
    report(
      `${path}.material`,
      'a material that does not conduct',
      'a conductor: copper, aluminium, brass or spring steel',
    );
  if (!(thickness < gap)) report(`${path}.thickness`, `${thickness} m`, `below ${gap} m, the gap between the poles`);
  if ((field === undefined) === (magnets === undefined))
    report(
      path,
      field === undefined ? 'neither field nor magnets' : 'field and magnets',
      'exactly one of field and magnets',
    );
}

/** Gas spring over the suspension's beyond which one frequency and one damping ratio say little of the motion [–]. */
const LARGEST_GAS_SPRING = 1;
/** Share of an arm's length beyond which the sag is no small deflection at all [–]. */
const LARGEST_SAG = 0.5;

/** Once it is worked out: what would break, or sag beyond all likeness to the model. */
export function strengthFaults({ spec }: Worked, figures: DesignFigures): DesignFault[] {
  const { suspension } = spec;
  const { strength, stressAtStops, stressPerG, sagPerG } = figures;
  const faults: DesignFault[] = [];
  const path = suspension.kind === 'coil' ? 'suspension.wire' : 'suspension.thickness';
  const place = suspension.kind === 'coil' ? 'in the wire' : 'at the clamp';
  // Stops catch the mass before its sag does harm.
  const [stress, when] =
    stressAtStops !== undefined && stressAtStops < stressPerG
      ? [stressAtStops, 'at the stops']
      : [stressPerG, 'under 1 g'];
  if (!(stress <= strength)) {
    faults.push({
      path,
      found: `${stress} Pa ${place} ${when}`,
      allowed: `at most ${strength} Pa, the strength of the material`,
    });
  } else if (stressAtStops !== undefined && !(stressAtStops <= strength)) {
    const found = `${stressAtStops} Pa ${place} with the mass at its stop`;
    faults.push({
      path,
      found,
      allowed: `at most ${strength} Pa, the strength of the material: nearer stops or a weaker bend`,
    });
  }
  const gas = figures.gasStiffness / figures.stiffness;
  if (gas > LARGEST_GAS_SPRING) {
    const found = `gas that springs ${gas} times as hard as the suspension`;
    const allowed = `at most ${LARGEST_GAS_SPRING}: a wider gap, less pressure, or several smaller plates`;
    faults.push({ path: 'damping.gasFilm', found, allowed });
  }
  if (
    suspension.kind !== 'coil' &&
    sagPerG > LARGEST_SAG * suspension.length &&
    !(figures.range !== undefined && figures.range < 1)
  ) {
    const found = `a sag of ${sagPerG} m under 1 g`;
    faults.push({
      path,
      found,
      allowed: `at most ${LARGEST_SAG * suspension.length} m, half the length: beyond, beams bend otherwise`,
    });
  }
  return faults;
}
