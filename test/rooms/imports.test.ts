import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectRoot } from '../../src/command/install.mjs';
import { faultsOf } from './check-source.ts';
import { ROOMS } from './table.ts';

const sources = readdirSync(join(projectRoot, 'src'), { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile() && /\.(ts|js|mjs)$/.test(entry.name))
  .map((entry) =>
    join(entry.parentPath, entry.name)
      .slice(projectRoot.length + 1)
      .replaceAll('\\', '/'),
  );

describe('every file in src keeps to its room', () => {
  it.for([...new Set(sources.map((path) => path.split('/').slice(0, 2).join('/')))])('%s', (folder) => {
    const files = sources.filter((path) => path === folder || path.startsWith(`${folder}/`));
    expect(files.length).toBeGreaterThan(0);
    expect(files.flatMap((path) => faultsOf(path, readFileSync(join(projectRoot, path), 'utf8')))).toEqual([]);
  });

  it('every door leads to a declared room', () => {
    const doors = Object.values(ROOMS).flatMap((room) => room.doors);
    expect(doors.filter((door) => ROOMS[door] === undefined && door !== 'lessons')).toEqual([]);
  });
});

describe('the check of rooms lets pass', () => {
  it.for([
    ['src/world/a.ts', "import { b } from './b.ts'; import type { S } from '../contract/snapshot.ts';"],
    ['src/world/deep/a.ts', "import { b } from '../b.ts'; import { c } from '../../element/c.ts';"],
    ['src/units/a.ts', "export { pow } from '../numerics/transcendental.ts';"],
    ['src/numerics/transcendental.ts', "import sin from '@stdlib/math-base-special-sin';"],
    ['src/housing/free.ts', "import { Body } from 'cannon-es';"],
    ['src/housing/free-contact.ts', "import { Body } from 'cannon-es';"],
    [
      'src/scene/a.ts',
      "import { Mesh } from 'three'; import { OrbitControls } from 'three/addons/controls/OrbitControls.js';",
    ],
    ['src/plot/a.ts', "import uPlot from 'uplot'; import 'uplot/dist/uPlot.min.css';"],
    ['src/ui/a.ts', "import { html } from 'lit'; import { property } from 'lit/decorators.js';"],
    ['src/app/a.ts', "import 'anything'; const lessons = import.meta.glob('../../lessons/*.md');"],
    ['src/element/a.ts', 'export const a = Math.sqrt(Math.PI) + Math.abs(-1) + Math.imul(2, 3);'],
    ['src/element/a.ts', "// Math.sin(1) ** 2, new Date()\nexport const a = 'Math.random() ** Date.now()';"],
    [
      'src/element/a.ts',
      'interface Timing { Date: number } export const a = (t: Timing) => t.Date + { performance: 1 }.performance;',
    ],
    [
      'src/contract/a.ts',
      "import type { B } from './b.ts'; export type { B }; export interface C { readonly b: B } type D = C;",
    ],
  ])('%s: %s', ([path = '', code = '']) => {
    expect(faultsOf(path, code)).toEqual([]);
  });
});

describe('the check of rooms finds', () => {
  it.for([
    // Undeclared rooms and doors, however the import is written.
    ['src/cellar/a.ts', 'export {};', 'lies in no declared room'],
    ['src/a.ts', 'export {};', 'lies in no declared room'],
    ['src/scene/a.ts', "import { w } from '../world/world.ts';", 'imports from world, to which scene has no door'],
    ['src/scene/a.ts', "import type { W } from '../world/world.ts';", 'imports from world'],
    ['src/scene/a.ts', "import '../world/world.ts';", 'imports from world'],
    ['src/scene/a.ts', "export { w } from '../world/world.ts';", 'imports from world'],
    ['src/scene/a.ts', "export * from '../world/world.ts';", 'imports from world'],
    ['src/scene/a.ts', "const w = await import('../world/world.ts');", 'imports from world'],
    ['src/scene/a.ts', "type W = import('../world/world.ts').World;", 'imports from world'],
    ['src/scene/a.ts', "import w = require('../world/world.ts');", 'imports from world'],
    ['src/scene/a.ts', "new Worker(new URL('../world/worker.ts', import.meta.url));", 'imports from world'],
    ['src/scene/a.ts', "import.meta.glob(['./a.ts', '../world/*.ts']);", 'imports from world'],
    ['src/scene/a.ts', 'await import(name);', 'not written out'],
    ['src/scene/a.ts', "import '../../test/a.ts';", 'imports from test'],
    ['src/world/a.ts', "import a from '../../package.json';", 'imports from package.json'],
    ['src/app/a.ts', "import '../command/start.ts';", 'imports from command'],
    ['src/ui/a.ts', "import '../app/main.ts';", 'imports from app'],
    ['src/command/a.ts', "import '../scene/a.ts';", 'imports from scene'],
    ['src/numerics/a.ts', "import '../units/a.ts';", 'imports from units'],
    ['src/element/a.ts', "import type { R } from '../readout/a.ts';", 'imports from readout'],
    ['src/readout/deep/a.ts', "import '../../element/a.ts';", 'imports from element'],
    // Libraries.
    ['src/housing/held.ts', "import { Body } from 'cannon-es';", 'only ^free'],
    ['src/world/a.ts', "import { Body } from 'cannon-es';", 'imports "cannon-es"'],
    ['src/numerics/a.ts', "import sin from '@stdlib/math-base-special-sin';", 'only ^transcendental'],
    ['src/element/a.ts', "import sin from '@stdlib/math-base-special-sin';", 'imports "@stdlib'],
    ['src/ui/a.ts', "import { Mesh } from 'three';", 'imports "three"'],
    ['src/scene/a.ts', "import { Mesh } from 'three-else';", 'imports "three-else"'],
    ['src/scenario/a.ts', "import { readFileSync } from 'node:fs';", 'imports "node:fs"'],
    // What makes a run differ from machine to machine.
    ['src/element/a.ts', 'export const a = Math.sin(1);', 'uses Math.sin'],
    ['src/units/a.ts', 'export const a = Math.log10(2);', 'uses Math.log10'],
    ['src/analysis/a.ts', 'export const a = Math.hypot(3, 4);', 'uses Math.hypot'],
    ['src/readout/a.ts', 'export const a = Math.random();', 'uses Math.random'],
    ['src/element/a.ts', "export const a = Math['sin'](1);", 'other than as Math.name'],
    ['src/element/a.ts', 'const { sin } = Math;', 'other than as Math.name'],
    ['src/element/a.ts', 'export const m = { Math };', 'other than as Math.name'],
    ['src/element/a.ts', 'export const a = 2 ** 3;', 'uses **'],
    ['src/element/a.ts', 'let a = 2; a **= 3;', 'uses **='],
    ['src/element/a.ts', 'export const a = `${2 ** 3}`;', 'uses **'],
    ['src/world/a.ts', 'export const a = Date.now();', 'uses Date'],
    ['src/lesson/a.ts', 'export const a = new Date();', 'uses Date'],
    ['src/world/a.ts', 'export const a = performance.now();', 'uses performance'],
    ['src/world/a.ts', 'setTimeout(() => 1, 2);', 'uses setTimeout'],
    ['src/world/a.ts', 'globalThis.Math.sin(1);', 'uses globalThis'],
    // Code that runs where only types belong.
    ['src/contract/a.ts', 'export const a = 1;', 'contract holds types only'],
    ['src/contract/a.ts', 'export function a() {}', 'contract holds types only'],
    ['src/contract/a.ts', 'export enum A { B }', 'contract holds types only'],
    ['src/contract/a.ts', "import './b.ts';", 'contract holds types only'],
    ['src/contract/a.ts', "import { B } from './b.ts';", 'contract holds types only'],
    ['src/contract/a.ts', "export * from './b.ts';", 'contract holds types only'],
    // A file that cannot be read proves nothing.
    ['src/world/a.ts', 'const = ;', 'Unexpected'],
  ])('%s: %s', ([path = '', code = '', fault = '']) => {
    const faults = faultsOf(path, code);
    expect(faults.length).toBeGreaterThan(0);
    expect(faults[0]).toContain(fault);
  });
});
