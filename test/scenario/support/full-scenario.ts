/** A scenario that uses every key once, and the file it reads. */
export const RECORD_CSV =
  '# a record for tests\nt_s,ax,ay,az,a_mg\n0.5,1,2,3,100\n0.75,1.5,2.5,3.5,200\n1.25,0,0,0,0\n';

export const FILES = {
  readFile(path: string): string {
    if (path === 'record.csv') return RECORD_CSV;
    throw new Error('there is no such file');
  },
};

export function fullScenario() {
  return {
    seed: 7,
    gravity: 9.81,
    startHeight: 0.7,
    duration: 5,
    tick: 0.001,
    temperature: 300,
    record: { rate: 100 },
    housing: { mass: 0.4, size: [0.1, 0.05, 0.15] },
    elements: [
      {
        name: 'one',
        axis: [0, 1, 0],
        at: [0.01, 0, 0],
        naturalFrequency: 12,
        dampingRatio: 0.1,
        gap: 0.02,
        restitution: 0.4,
        cubicStiffness: 1000,
        mount: { naturalFrequency: 50, dampingRatio: 0.2, massRatio: 0.01 },
        thermalNoise: true,
        mass: 0.02,
        fieldAtMass: true,
        start: { deflection: 0.001, velocity: -0.01 },
        readout: { rate: 100, range: 40, bits: 12 },
      },
      {
        name: 'two',
        axis: [1, 0, 0],
        naturalFrequency: 20,
        dampingRatio: 0.05,
        staticRemainder: 1e-7,
        modes: [{ naturalFrequency: 20, dampingRatio: 0.05, participation: 1.1, shape: 0.9, modalMass: 0.02 }],
      },
    ],
    motions: [
      { from: 0, kind: 'held', within: 0.1, tremor: { frequency: 7, amplitude: 0.2, axis: [1, 0, 0] } },
      {
        from: 0.5,
        kind: 'free',
        height: 0.3,
        attitude: { axis: [0, 0, 1], angle: 0.2 },
        spin: [0, 1, 0],
        pad: { stiffness: 20000, damping: 5, thickness: 0.05, friction: 0.4 },
        airDrag: { area: 0.01, coefficient: 1.1, airDensity: 1.2 },
      },
      { from: 1, kind: 'shake', axis: [0, 1, 0], sine: { frequency: 5, amplitude: 1, ease: 0.5 } },
      {
        from: 1.5,
        kind: 'shake',
        axis: [0, 1, 0],
        sweep: { from: 2, to: 20, amplitude: 1, over: 2, law: 'logarithmic', ease: 0.5 },
      },
      { from: 2, kind: 'shake', axis: [0, 1, 0], random: { density: 0.1, from: 2, to: 20, ease: 0.5 } },
      { from: 2.5, kind: 'move', axis: [0, 0, 1], distance: -0.2, over: 0.3 },
      { from: 3, kind: 'push', axis: [0, 1, 0], acceleration: 3, within: 0.1 },
      { from: 3.25, kind: 'tilt', to: [0, 0, 0.6, 0.8], over: 0.2 },
      { from: 3.5, kind: 'spin', axis: [0, 1, 0], rate: 3, within: 0.2 },
      {
        from: 4,
        kind: 'recorded',
        file: 'record.csv',
        time: 't_s',
        columns: ['a_mg'],
        unit: 'mg',
        is: 'acceleration',
        axis: [0, 1, 0],
      },
      { from: 4.5, kind: 'hand', targets: [{ at: 4.6, position: [0, 1, 0], attitude: [0, 0, 0, 1], over: 0.2 }] },
    ],
    changes: [
      { at: 0.25, gravity: 1.62 },
      {
        at: 0.5,
        element: 'one',
        set: {
          naturalFrequency: 11,
          dampingRatio: 0.2,
          gap: 0.01,
          restitution: 0.3,
          cubicStiffness: 2000,
          mount: { naturalFrequency: 40, dampingRatio: 0.1, massRatio: 0 },
          readout: { rate: 50, range: 20, bits: 8 },
        },
      },
      { at: 0.75, pad: { stiffness: 10000, damping: 4, thickness: 0.04, friction: 0.3 } },
    ],
  };
}
