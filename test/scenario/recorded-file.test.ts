import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type RecordedRequest, readRecordedFile } from '../../src/scenario/recorded-file.ts';
import { recordedPath } from '../support/recorded.ts';

const REQUEST: RecordedRequest = { file: 'r.csv', time: 't', columns: ['a'], unit: 'm/s2' };

function read(text: string, request: Partial<RecordedRequest> = {}) {
  const faults: string[] = [];
  const data = readRecordedFile(text, { ...REQUEST, ...request }, 'motions[0]', (path, found, allowed) =>
    faults.push(`${path}: ${found}; ${allowed}`),
  );
  return { faults, times: data && [...data.timeS], values: data?.valuesMS2.map((column) => [...column]) };
}

describe('a record', () => {
  it('has times from 0 and values in m/s²', () => {
    expect(read('t,a\n2,1\n2.5,-3\n4,0.5\n')).toEqual({ faults: [], times: [0, 0.5, 2], values: [[1, -3, 0.5]] });
    expect(read('t,a\n0,2\n1,-1\n', { unit: 'g' }).values).toEqual([[2 * 9.80665, -9.80665]]);
    expect(read('t,a\n0,1000\n1,-500\n', { unit: 'mg' }).values).toEqual([[9.80665, -9.80665 / 2]]);
  });

  it('takes its columns by name, in the order asked for', () => {
    expect(read('z,t,y,x\n3,0,2,1\n6,1,5,4\n', { columns: ['x', 'y', 'z'] }).values).toEqual([
      [1, 4],
      [2, 5],
      [3, 6],
    ]);
  });

  it.each([
    ['comments and blank lines', '# one\n\nt,a\n# two\n0,1\n\n1,2\n#three'],
    ['a byte order mark and CRLF', '\ufefft,a\r\n0,1\r\n1,2\r\n'],
    ['no line break at the end', 't,a\n0,1\n1,2'],
    ['spaces around', ' t , a \n 0 , 1 \n 1 , +2.0e0 '],
    ['quoted fields', '"t","a"\r\n"0","1"\r\n"1",2\r\n'],
    ['a quoted header with a comma, a quote and a line break', '"t","a, ""b""\r\nc"\n0,1\n1,2'],
  ])('reads %s', (what, text) => {
    const columns = what.includes('comma') ? ['a, "b"\r\nc'] : ['a'];
    expect(read(text, { columns })).toEqual({ faults: [], times: [0, 1], values: [[1, 2]] });
  });

  // RFC 4180, section 2, rules 5 to 7, with numbers for its letters.
  it('reads the quoting of RFC 4180', () => {
    expect(
      read('"aaa","b ""bb","ccc"\r\n1,"5",3\r\n2,"6",9\r\n', { time: 'aaa', columns: ['b "bb', 'ccc'] }).values,
    ).toEqual([
      [5, 6],
      [3, 9],
    ]);
    expect(read('"aaa","b \r\nbb","ccc"\r\n1,5,3\r\n1,6,9\r\n', { time: 'aaa', columns: ['ccc'] }).faults).toEqual([
      'motions[0].time: "1" in line 4 of "r.csv"; times that rise from row to row',
    ]);
  });

  const refused: readonly (readonly [text: string, request: Partial<RecordedRequest>, fault: string])[] = [
    ['', {}, 'motions[0].file: no header in "r.csv"; a line with the names of the columns, then rows'],
    ['# only this\n', {}, 'motions[0].file: no header in "r.csv"; a line with the names of the columns, then rows'],
    ['t,a\n', {}, 'motions[0].file: 0 rows in "r.csv"; at least 2 rows below the header'],
    ['t,a\n0,1\n', {}, 'motions[0].file: 1 row in "r.csv"; at least 2 rows below the header'],
    ['t,a\n0,1\n1,2', { time: 'T' }, 'motions[0].time: no column "T" in "r.csv"; "t" or "a"'],
    ['t,a\n0,1\n1,2', { columns: ['a', 'b'] }, 'motions[0].columns[1]: no column "b" in "r.csv"; "t" or "a"'],
    [
      't,a,a\n0,1,1\n1,2,2',
      {},
      'motions[0].columns[0]: the column "a" twice in "r.csv"; a name that stands once in the header',
    ],
    ['t,a\n0,1\n#\n1,x\n', {}, 'motions[0].columns[0]: "x" in column "a" in line 4 of "r.csv"; a number'],
    ['t,a\n0,1\n1,\n', {}, 'motions[0].columns[0]: "" in column "a" in line 3 of "r.csv"; a number'],
    ['t,a\n0,1\n1,NaN\n', {}, 'motions[0].columns[0]: "NaN" in column "a" in line 3 of "r.csv"; a number'],
    ['t,a\n0,1\n1,1e999\n', {}, 'motions[0].columns[0]: "1e999" in column "a" in line 3 of "r.csv"; a number'],
    ['t,a\n0,1\n1,0x10\n', {}, 'motions[0].columns[0]: "0x10" in column "a" in line 3 of "r.csv"; a number'],
    [
      't,a\n0,1\n1,1e6\n',
      { unit: 'g' },
      'motions[0].columns[0]: 9806650 m/s² in line 3 of "r.csv"; from -1000000 to 1000000 m/s²',
    ],
    ['t,a\n0,1\n1\n', {}, 'motions[0].file: 1 field in line 3 of "r.csv"; 2, as in the header'],
    ['t,a\n0,1\n1,2,3\n', {}, 'motions[0].file: 3 fields in line 3 of "r.csv"; 2, as in the header'],
    ['t,a\n0,1\n0,2\n', {}, 'motions[0].time: "0" in line 3 of "r.csv"; times that rise from row to row'],
    ['t,a\n0,1\n1,2\n0.5,2\n', {}, 'motions[0].time: "0.5" in line 4 of "r.csv"; times that rise from row to row'],
    // Two times that differ by less than the double of their distance from the first can hold.
    ['t,a\n-1e9,1\n0,2\n1e-9,2\n', {}, 'motions[0].time: "1e-9" in line 4 of "r.csv"; times that rise from row to row'],
    ['t,a\n0,1\n"1,2\n2,3\n', {}, 'motions[0].file: 1 field in line 3 of "r.csv"; 2, as in the header'],
  ];
  it.each(refused)('%j with %j is refused', (text, request, fault) => {
    expect(read(text, request).faults).toEqual([fault]);
  });

  it('one quoted line of a million fields takes no longer than as many lines', () => {
    expect(read(`"t",a${',"b"'.repeat(1_000_000)}\n`).faults).toHaveLength(1);
  }, 5000);
});

const elCentro = recordedPath('el-centro-1940-ns.csv');

// A. K. Chopra, Dynamics of Structures, appendix: 1559 values, the largest 0.319 g; 1560 rows with the leading zero.
it.skipIf(elCentro === undefined)(
  'the El Centro record of 1940 has 1560 rows up to 31.18 s and peaks at 0.319 g',
  () => {
    const {
      faults,
      times = [],
      values = [[]],
    } = read(readFileSync(elCentro ?? '', 'utf8'), { time: 't_s', columns: ['a_g'], unit: 'g' });
    expect(faults).toEqual([]);
    expect(times).toHaveLength(1560);
    expect(times.at(-1)).toBe(31.18);
    expect(Math.max(...values.flat().map(Math.abs)) / 9.80665).toBeCloseTo(0.319, 3);
  },
);
