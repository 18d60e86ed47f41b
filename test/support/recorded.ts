/**
 * Where the recorded accelerations lie that some tests compare with. They belong to others and are not part of
 * this repository: they are looked for in REFERENCE_DIR, then in ../shared/reference beside the project.
 *
 *     const record = recordedPath('real-drop-1.csv');
 *     describe.skipIf(record === undefined)('…', …);
 */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { projectRoot } from '../../src/command/install.mjs';

/** Lines that start with # are comments; the first other line names the columns. */
const SOURCES = {
  'el-centro-1940-ns.csv':
    'ground acceleration of the Imperial Valley earthquake of 18 May 1940 at El Centro, north-south, 1559 values in g at ' +
    '0.02 s, printed in the appendix of A. K. Chopra, Dynamics of Structures; columns t_s,a_g from a leading 0,0 on',
  'real-static-flat.csv': phone('accel_static.txt'),
  'real-drop-1.csv': phone('fall_vertical_1.txt'),
  'real-drop-2.csv': phone('fall_vertical_2.txt'),
  'real-ten-positions.csv': inertialUnit('example_data_calibration.csv'),
  'real-static-450s.csv': inertialUnit('example_data_tinit_calc.csv'),
  'real-tilt-90-about-x.csv': inertialUnit('imu_90_x_rot.csv'),
} as const;

export type RecordName = keyof typeof SOURCES;

/**
 * Path of a record, or undefined, with a line on where to get it, if it is not here. With REQUIRE_RECORDS=1,
 * as in continuous integration, a missing record is an error.
 */
export function recordedPath(name: RecordName): string | undefined {
  const folders = [process.env.REFERENCE_DIR, join(projectRoot, '..', 'shared', 'reference')];
  for (const folder of folders) {
    if (folder && existsSync(join(folder, name))) return join(folder, name);
  }
  const line = `${name} is not here: ${SOURCES[name]}. Put it into a folder and name that in REFERENCE_DIR.`;
  if (process.env.REQUIRE_RECORDS === '1') throw new Error(line);
  console.warn(`Skipped: ${line}`);
  return undefined;
}

function phone(file: string): string {
  return (
    `${file} of F. Saliby, Air Resistance From the Acceleration of a Falling Smartphone, arXiv:2410.14172 (2024), ` +
    'data at github.com/fsaliby/Air_Resistance_From_the_Acceleration_of_a_Falling_Smartphone, commit 2d8e516, CC0 1.0; ' +
    'columns t_s,fx,fy,fz in m/s²'
  );
}

function inertialUnit(file: string): string {
  return (
    `${file} of github.com/tomisuarez2/ImuCalibration, commit c86ea25, MIT licence; accelerometer columns ix,iy,iz in ` +
    'counts, 100 samples/s'
  );
}
