import { noChange } from 'lit';
import { Directive, directive, type ElementPart, type PartInfo, PartType } from 'lit/directive.js';

/** One sentence for each control: what it does, said where hovering, focus or a long touch asks for it. */
export const HELP = {
  hold: 'Holds the housing still at its height, in the clamp or in a hand that trembles.',
  drop: 'Lets go of the housing; where it is not at its height, it is carried there first.',
  shake: 'Puts the housing on the shaker: steadily, sweeping through frequencies or at random.',
  tilt: 'Turns the housing about the axis that looks at you and holds it there.',
  throw: 'Pushes the housing upward and lets go while it still rises.',
  move: 'Carries the housing a distance and stops it, as a lift does.',
  push: 'Pushes the housing with a steady acceleration, here or in weightless space.',
  spin: 'Turns the housing round and round at a steady rate.',
  recorded: 'Moves the housing as a recorded file says.',
  'more ways': 'Shows further ways to handle the housing: throw, move, push, spin, a recorded file.',
  letters: 'Turns the single letters that press keys off and on.',
  slowdown: 'How many times slower than life everything runs: pull the lever or type a number.',
  pause: 'Stops time, or lets it go on from what is shown.',
  'one tick on': 'Goes on by one tick, the smallest step of the reckoning.',
  undo: 'Sets back what was set last; the run goes on.',
  redo: 'Sets again what undo took back.',
  'fresh run': 'Begins a new run with the same settings and seed; this one is kept.',
  clear: 'Begins a new run and forgets this one and those kept.',
  mass: 'The proof mass; a heavier one on the same spring sags more and swings slower.',
  frequency: 'How often mass and spring swing in a second without damping; the spring follows.',
  stiffness: 'Force of the spring for each metre it gives; stiffer sags less and swings faster.',
  damping: 'Share of the damping at which the mass just no longer swings: 0 rings for ever, 1 not at all.',
  gap: 'How far the mass can go before it meets a stop; it sets the largest reading.',
  restitution: 'Share of its speed with which the mass comes off a stop.',
  gravity: 'Pull of the place in metres per second squared; 9.80665 is the standard, 0 is space.',
  'drop.height': 'Height of the housing’s lowest point above the felt before it is let go.',
  'pad.stiffness': 'Force of the felt for each metre that it gives; stiffer lands harder and shorter.',
  'pad.damping': 'How much of the bounce the felt takes away.',
  'pad.friction': 'How hard the felt holds a housing that slides, as a share of what presses on it.',
  'readout.rate': 'How many numbers the sensor reports each second.',
  'readout.range': 'The largest acceleration that the sensor can report; what is beyond is cut off.',
  'readout.bits': 'Into how many steps the range is divided: each bit doubles them.',
  'readout.on': 'Shows or hides what the sensor reports, as dots on the tape.',
  springBy: 'Whether you give the spring by its frequency with this mass or by its stiffness.',
  stops: 'Puts the two stops in or takes them out.',
  senses: 'Which way in the housing the element senses; a fresh run begins.',
  place: 'Takes gravity from a place: its latitude and height above the sea.',
  latitude: 'Gravity grows from the equator to the pole.',
  placeHeight: 'Gravity lessens with height above the sea.',
  air: 'Lets the falling housing meet air: then a fall no longer reads exactly zero.',
  'save run': 'Keeps this run as a file that the bench and the command line can make again.',
  'copy link': 'Copies an address that brings this run back for whoever opens it.',
  'open run': 'Takes up a run from a file and replays it.',
  'bring back': 'Shows this kept run again; the one that stands now is kept instead.',
  record: 'Reads a table of times and accelerations from a file; it stays on this device.',
  'play record': 'Moves the shaker as the file says.',
  'more lines': 'Shows further lines, and how the paper is ruled.',
  felt: 'What pushes the housing apart from gravity, along the element: what an ideal sensor would read.',
  'mass line': 'Where the mass stands, on the scale of the reading: what the pen writes.',
  reported: 'The numbers that the sensor reports: sampled, cut off and rounded.',
  acceleration: 'How the housing’s velocity changes, seen from the room.',
  velocity: 'How fast the housing moves, seen from the room.',
  height: 'How high the housing’s lowest point is.',
  drag: 'A drag over the tape marks a span for its figures, as with Shift held; off, it pulls the paper.',
  trigger: 'Waits until a line passes a level, then stands still and shows the time around it.',
  unit: 'Rules the paper in multiples of standard gravity or in metres per second squared.',
  range: 'Lets the paper reach as far as what is on it, or always as far.',
  'turn sign': 'Counts what gravity pulls instead of what the support pushes: every sign turns.',
  'gravity here': 'Opens the sheet where place and gravity are chosen.',
  words: 'Opens the words of the trade and the equations that the bench goes by.',
  theme: 'Changes between daylight and evening.',
  stage: 'Large type and only the bench, for showing to a room.',
  'second paper': 'Draws what the element, as it is set, answers; it is drawn anew while a setting changes.',
  'roll away': 'Rolls the second paper away, and the room shows again.',
  answers: 'Unrolls a second paper: amplitude and phase, step and ring-down, landings.',
  fold: 'Folds the folder away, so that the bench has the room.',
} as const;

export type HelpName = keyof typeof HELP;

export function isHelped(name: string): name is HelpName {
  return Object.hasOwn(HELP, name);
}

class HelpDirective extends Directive {
  constructor(part: PartInfo) {
    super(part);
    if (part.type !== PartType.ELEMENT) throw new Error('help stands on an element');
  }

  render(_name: HelpName | undefined): unknown {
    return noChange;
  }

  override update({ element }: ElementPart, [name]: [HelpName | undefined]): unknown {
    const sentence = name === undefined ? undefined : HELP[name];
    if (sentence === undefined || element.getAttribute('data-help') === sentence) return noChange;
    element.setAttribute('data-help', sentence);
    element.setAttribute('aria-description', sentence);
    return noChange;
  }
}

/** Puts a control's sentence on it, for the note and for screen readers: `<button ${help('drop')}>`. */
export const help = directive(HelpDirective);
