/**
 * The terms that the bench speaks in. Sources are titles of standards as published; where a standard's own wording was not
 * read, the line is ours. "Trade": used so in handbooks, without one standard behind it.
 */
import type { GlossaryTerm } from '../contract/lesson.ts';

export const GLOSSARY: readonly GlossaryTerm[] = [
  {
    id: 'specific-force',
    term: 'specific force',
    line: 'What pushes on a thing per kilogram, gravity left out. It is what an accelerometer feels.',
    source: 'IEEE Std 528, 1293',
    see: 'the dashed line, +1 g held and 0 in a fall',
  },
  {
    id: 'proof-mass',
    term: 'proof mass',
    line: 'The mass whose movement inside the housing is read. Also: seismic mass.',
    source: 'IEEE Std 1293',
    see: 'the brass block on its arm',
  },
  {
    id: 'housing',
    term: 'housing',
    line: 'The body that is fixed to what is measured. Also: case, frame.',
    source: 'trade',
    see: 'the glass box, in both views',
  },
  {
    id: 'deflection',
    term: 'deflection',
    line: 'Where the mass is relative to the housing, counted from where the unloaded spring has it.',
    source: 'ISO 2041, relative displacement',
    see: 'the figure beside the big reading, so much low or high',
  },
  {
    id: 'input-axis',
    term: 'input axis',
    line: 'The direction in which the element feels.',
    source: 'IEEE Std 1293',
    see: 'tilt the housing by 90° and the reading goes from 1 g to 0',
  },
  {
    id: 'natural-frequency',
    term: 'natural frequency',
    line: 'How fast the mass would swing without damping, √(k/m)/2π.',
    source: 'ISO 2041',
    see: 'count the swings after a drop',
  },
  {
    id: 'damping-ratio',
    term: 'damping ratio ζ',
    line: 'Damping as a share of the least that keeps the mass from swinging.',
    source: 'ISO 2041',
    see: 'slide the damping while it rings',
  },
  {
    id: 'critical-damping',
    term: 'critical damping',
    line: 'The least damping at which nothing overshoots: a damping ratio of 1.',
    source: 'ISO 2041',
    see: 'set the damping to 1 and drop',
  },
  {
    id: 'logarithmic-decrement',
    term: 'logarithmic decrement',
    line: 'Natural logarithm of one swing over the next on the same side, 2πζ/√(1 − ζ²).',
    source: 'ISO 2041',
    see: 'the shrinking swings on the tape',
  },
  {
    id: 'quality-factor',
    term: 'quality factor Q',
    line: 'How sharp a resonance is. With light damping 1/(2ζ), and nearly the height of the peak.',
    source: 'ISO 2041',
    see: 'shake it at its natural frequency, and compare what happened with what the mass did',
  },
  {
    id: 'resonance',
    term: 'resonance',
    line: 'Shaken near its natural frequency, a lightly damped mass swings more than it should.',
    source: 'ISO 2041',
    see: 'shake it in a sweep from 1 Hz to 30 Hz',
  },
  {
    id: 'phase',
    term: 'phase',
    line: 'How far one swing is behind another, in degrees of a full turn of 360°.',
    source: 'ISO 2041',
    see: 'shake it at its natural frequency: the pen comes a quarter of a turn late',
  },
  {
    id: 'overshoot',
    term: 'overshoot',
    line: 'How far a reading goes beyond its final value after a sudden change.',
    source: 'trade',
    see: 'drop it, and look how far below zero the pen goes',
  },
  {
    id: 'settling-time',
    term: 'settling time',
    line: 'From a sudden change until the reading stays within a stated band, in the plain-words line 2 %.',
    source: 'trade',
    see: 'the plain-words line, while you slide the damping',
  },
  {
    id: 'standard-gravity',
    term: 'standard gravity gₙ',
    line: 'A unit, 9.80665 m/s² exactly. Gravity where you stand differs a little.',
    source: 'CGPM 1901, ISO 80000-3',
    see: 'the sheet Place, on the equator and at a pole',
  },
  {
    id: 'drag',
    term: 'drag',
    line: 'The push of the air against what moves through it. It grows with the square of the speed.',
    source: 'trade',
    see: 'drop it from 2 m with the air let in, on the sheet Place',
  },
  {
    id: 'velocity-change',
    term: 'shock pulse, velocity change',
    line: 'A short push, and its area over time: what a landing does to the speed.',
    source: 'ISO 2041',
    see: 'mark a landing on the tape and read its area',
  },
  {
    id: 'linear-acceleration',
    term: 'linear acceleration',
    line: 'Change of velocity in the room. It is computed, never felt.',
    source: 'W3C Accelerometer',
    see: 'call up “acceleration in the room”, −1 g in a fall that feels 0',
  },
  {
    id: 'full-scale-range',
    term: 'full-scale range',
    line: 'The largest reading that is reported; beyond it the report is clipped.',
    source: 'IEEE Std 2700',
    see: 'the red dots at a landing',
  },
  {
    id: 'output-data-rate',
    term: 'output data rate',
    line: 'Reported values per second. What happens between two of them is not seen.',
    source: 'IEEE Std 2700',
    see: 'set 10 samples a second on the sheet Read-out, and drop',
  },
];

/** What a lesson's link to a term may lead to. */
export const TERM_IDS: ReadonlySet<string> = new Set(GLOSSARY.map(({ id }) => id));
