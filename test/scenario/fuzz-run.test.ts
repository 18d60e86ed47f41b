import { expect, it } from 'vitest';
import { faultSentence } from '../../src/scenario/fault.ts';
import { parseScenario } from '../../src/scenario/parse-scenario.ts';
import { rowCount, simulate } from '../../src/scenario/simulate.ts';
import { chance } from './support/chance.ts';
import { FILES } from './support/full-scenario.ts';
import { randomScenario } from './support/random-scenario.ts';

it('1000 random scenarios of up to 200 ticks run to their last row and stay finite (seed 2)', () => {
  const random = chance(2);
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
}, 120_000);
