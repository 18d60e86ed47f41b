/** The rooms of src and their doors; DEVELOPERS.md, "Rooms", gives the reasons. What is not declared here is forbidden. */
export interface Room {
  /** Rooms it may import from beside itself; `lessons` is the folder of lesson data beside src. */
  readonly doors: readonly string[];
  /** Libraries it may import, each from files whose path inside the room matches; undefined: any. */
  readonly libraries: readonly { readonly name: string; readonly files: RegExp }[] | undefined;
  /** Runs without a screen and gives the same bits everywhere: no DOM, no clock, no transcendentals of `Math`. */
  readonly headless: boolean;
}

const ANY_FILE = /./;
const SCENARIO_DOORS = ['world', 'contract', 'design', 'recording', 'readout', 'analysis', 'units', 'numerics'];
const LESSON_DOORS = [...SCENARIO_DOORS, 'scenario', 'session'];

const HEADLESS: Readonly<Record<string, Room>> = {
  contract: headless([]),
  numerics: headless([], [{ name: '@stdlib', files: /^transcendental\.ts$/ }]),
  units: headless(['numerics']),
  design: headless(['contract', 'numerics', 'units']),
  element: headless(['contract', 'numerics']),
  housing: headless(['contract', 'numerics'], [{ name: 'cannon-es', files: /^free[^/]*\.ts$/ }]),
  readout: headless(['contract', 'numerics', 'units']),
  recording: headless(['contract']),
  analysis: headless(['numerics', 'units']),
  world: headless(['contract', 'element', 'housing', 'readout', 'recording', 'numerics']),
  scenario: headless(SCENARIO_DOORS),
  session: headless([...SCENARIO_DOORS, 'scenario']),
  lesson: headless(LESSON_DOORS, [
    { name: 'marked', files: /^(prose|parse-lesson)\.ts$/ },
    { name: 'yaml', files: /(schema|yaml-shapes)\.ts$/ },
  ]),
};

const ON_SCREEN: Readonly<Record<string, Room>> = {
  exchange: { doors: ['contract', 'recording', 'scenario', 'session', 'units'], libraries: [], headless: false },
  scene: { doors: ['contract', 'units'], libraries: [{ name: 'three', files: ANY_FILE }], headless: false },
  plot: { doors: ['contract', 'units'], libraries: [{ name: 'uplot', files: ANY_FILE }], headless: false },
  ui: { doors: ['contract', 'units'], libraries: [{ name: 'lit', files: ANY_FILE }], headless: false },
};

export const ROOMS: Readonly<Record<string, Room>> = {
  ...HEADLESS,
  ...ON_SCREEN,
  // The page wires everything but what only runs in Node, and nothing imports the page.
  app: {
    doors: [...Object.keys(HEADLESS), ...Object.keys(ON_SCREEN), 'lessons'],
    libraries: undefined,
    headless: false,
  },
  command: { doors: Object.keys(HEADLESS), libraries: undefined, headless: false },
};

function headless(doors: readonly string[], libraries: Room['libraries'] = []): Room {
  return { doors, libraries, headless: true };
}
