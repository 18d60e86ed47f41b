import { expect, it } from 'vitest';
import { faultSentence } from '../../src/scenario/fault.ts';
import { parseScenario } from '../../src/scenario/parse-scenario.ts';
import { rowCount, simulate } from '../../src/scenario/simulate.ts';
import { chance } from './support/chance.ts';
import { FILES } from './support/full-scenario.ts';
import { randomScenario } from './support/random-scenario.ts';

it.each(Array.from({ length: 10 }, (_, n) => n + 1))(
  '1000 random scenarios of up to 200 ticks run to their last row and stay finite (seed %d)',
  (seed) => {
    const random = chance(seed);
    for (let n = 0; n < 1000; n++) {
      const text = JSON.stringify(randomScenario(random));
      const { run, faults } = parseScenario(text, FILES);
      if (run === undefined) throw new Error(`${faults.map(faultSentence).join('\n')}\n${text}`);
      const readings = run.elements.flatMap(({ readout }) => [false, false, false, ...(readout ? [true, true] : [])]);
      let rows = 0;
      simulate(run, {
        row(row, values) {
          if (row !== rows || values[0] !== row / run.record.rate)
            throw new Error(`row ${row} stands at ${values[0]}\n${text}`);
          for (let i = 1; i < values.length; i++) {
            if (!Number.isFinite(values[i]) && !readings[i - 4])
              throw new Error(`value ${i} of row ${row} is ${values[i]}\n${text}`);
          }
          rows += 1;
        },
        sample(element, timeS, valueG) {
          if (!Number.isFinite(valueG)) throw new Error(`sample ${valueG} of element ${element} at ${timeS}\n${text}`);
        },
      });
      expect(rows).toBe(rowCount(run));
    }
  },
  120_000,
);

/** Found by such a run: after a rebound slower than the rounding of its modes the mass met the stop again where it stood, for ever. */
const SLOW_REBOUND = {
  gravity: 9.80665,
  housing: { size: [0.28836573455715553, 0.26715360176749525, 0.021123256771825253] },
  tick: 3.7e-5,
  duration: 0.00412255263715703,
  record: { rate: 28299.05895647853 },
  elements: [
    {
      at: [0.01383954528719187, 0.03588064305949956, 0.020856794628780335],
      gap: 2.5987714468320204e-7,
      restitution: 0.9486134240869433,
      staticRemainder: 8.662571489440068e-10,
      name: 'e1',
      axis: [-0.5506704011932015, -0.31652892334386706, 0.18952063275501133],
      naturalFrequency: 535.4970140904315,
      dampingRatio: 0,
      modes: [
        {
          naturalFrequency: 535.4970140904315,
          dampingRatio: 0,
          participation: 0.9399250135757029,
          shape: 0.745632658014074,
          modalMass: 0.01804873820510693,
        },
        {
          naturalFrequency: 3212.9820845425893,
          dampingRatio: 0,
          participation: 0.6052690981887281,
          shape: -0.5115005713887513,
          modalMass: 0.04876765161706135,
        },
        {
          naturalFrequency: 5890.467154994747,
          dampingRatio: 0,
          participation: 1.1617293837480247,
          shape: -0.3741021214518696,
          modalMass: 0.026313818997237833,
        },
      ],
    },
  ],
  motions: [
    {
      from: 0,
      kind: 'tilt',
      to: { axis: [0.3535682111978531, 0.6400318718515337, 0.33148745328653606], angle: 1.264310956504196 },
      over: 0.0011700049865607225,
    },
    {
      from: 0.0026954788051719914,
      kind: 'shake',
      axis: [0.21101643051952124, -0.17716146353632212, 0.8430502540897578],
      random: {
        ease: 0.0048669736918434256,
        density: 0.9460393574554473,
        from: 1033.835188127403,
        to: 85256.8011166755,
      },
    },
    {
      attitude: [-0.642990187741816, 0.5819197138771415, -0.13814435433596373, 0.7001413170713932],
      from: 0.002717164676135671,
      kind: 'free',
    },
    {
      pad: { damping: 23.577768448740244, friction: 0.7045714557170868, stiffness: 300000 },
      from: 0.0030533698928076874,
      kind: 'free',
    },
  ],
};

it('a rebound slower than the rounding of the modes leaves the stop', () => {
  const { run } = parseScenario(JSON.stringify(SLOW_REBOUND), FILES);
  if (run === undefined) throw new Error('not a sound scenario');
  let rows = 0;
  simulate(run, { row: () => (rows += 1) });
  expect(rows).toBe(rowCount(run));
});
