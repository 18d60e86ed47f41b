/** Colours of both drawings, in depth and flat, by theme. */
import type { Theme } from '../contract/view.ts';

export interface Palette {
  readonly text: string;
  readonly soft: string;
  readonly ink: string;
  readonly paper: string;
  readonly bench: string;
  readonly brass: string;
  readonly brassLight: string;
  readonly brassDark: string;
  readonly massFace: string;
  readonly steel: string;
  readonly steelLight: string;
  readonly lever: string;
  readonly leverEdge: string;
  readonly nib: string;
  readonly rod: string;
  readonly iron: string;
  readonly rubber: string;
  readonly felt: string;
  readonly feltDark: string;
  readonly wood: string;
  readonly woodDark: string;
  readonly boxwood: string;
  readonly boxwoodLine: string;
  readonly back: readonly [string, string];
  readonly floor: string;
  readonly wall: string;
  readonly beech: string;
  readonly beechLine: string;
  readonly oil: string;
  readonly glass: string;
  readonly screw: string;
}

const DAY: Palette = {
  text: '#2b2722',
  soft: '#5a5247',
  ink: '#004488',
  paper: '#fbf7ec',
  bench: '#e8e0d2',
  brass: '#cbb074',
  brassLight: '#e8d6a4',
  brassDark: '#957b48',
  massFace: '#ccab62',
  steel: '#3d5aa6',
  steelLight: '#5b7fc4',
  lever: '#626b6f',
  leverEdge: '#3c4346',
  nib: '#3b3a38',
  rod: '#8d8f8e',
  iron: '#35332f',
  rubber: '#6b2f2a',
  felt: '#567560',
  feltDark: '#3e5747',
  wood: '#5a3420',
  woodDark: '#3f2415',
  boxwood: '#e9ddc0',
  boxwoodLine: '#4a4030',
  back: ['#fffdf7', '#f1ebdd'],
  floor: '#b5a582',
  wall: '#e3dccd',
  beech: '#cfc3ae',
  beechLine: '#b3a288',
  oil: '#d39a35',
  glass: '#96b6c0',
  screw: '#4a5f9e',
};

const EVENING: Palette = {
  text: '#f0e6d3',
  soft: '#c2b49c',
  ink: '#99ddff',
  paper: '#23211f',
  bench: '#2a2521',
  brass: '#a88c4e',
  brassLight: '#cbb074',
  brassDark: '#6d5931',
  massFace: '#b0924f',
  steel: '#5f7fd0',
  steelLight: '#8aa6e6',
  lever: '#e2e2dc',
  leverEdge: '#8d8c86',
  nib: '#c9c6be',
  rod: '#b9bab8',
  iron: '#1d1b19',
  rubber: '#8a4038',
  felt: '#3f5d4b',
  feltDark: '#2c4035',
  wood: '#5a3420',
  woodDark: '#3a2113',
  boxwood: '#a8905a',
  boxwoodLine: '#241d10',
  back: ['#2a2622', '#352f28'],
  floor: '#5d5035',
  wall: '#3a332a',
  beech: '#4c3c2a',
  beechLine: '#3a2d1f',
  oil: '#c8943a',
  glass: '#8fa9b4',
  screw: '#7f96dd',
};

export const paletteOf = (theme: Theme): Palette => (theme === 'day' ? DAY : EVENING);
