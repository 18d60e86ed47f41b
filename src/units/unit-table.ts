import { G_N } from './standard-gravity.ts';

/**
 * What quantities the page speaks of. The value behind each is SI: s, Hz, rad/s, m, kg, m/s², rad, N/m, N·s/m,
 * m/s, K, and plain ratios (5 % is 0.05).
 */
export type QuantityKind =
  | 'time'
  | 'frequency'
  | 'angular rate'
  | 'length'
  | 'mass'
  | 'acceleration'
  | 'angle'
  | 'stiffness'
  | 'damping'
  | 'speed'
  | 'temperature'
  | 'dimensionless'
  | 'percent';

export interface Unit {
  /** As printed; '' for a plain number. */
  readonly symbol: string;
  /** Power of ten against the family. */
  readonly exponent: number;
  /** Other ways to type it, beside those that `oneSpelling` makes equal. */
  readonly aliases: readonly string[];
  /** Understood when typed, never chosen for printing. */
  readonly typedOnly?: boolean;
}

/** Units that differ by powers of ten: SI value = number·10^exponent·times/per + offset. */
export interface UnitFamily {
  readonly times: number;
  readonly per: number;
  readonly offset: number;
  readonly units: readonly Unit[];
}

export interface Quantity {
  /** With its article, for sentences. */
  readonly name: string;
  /** The first is the one printed unless another is asked for. */
  readonly families: readonly UnitFamily[];
}

/**
 * Factors: SI Brochure, 9th ed. (2019), tables 7 and 8 (prefixes, min, h, °); NIST SP 811 (2008), appendix B.8
 * (km/h, r/min, °, °C); g_n in standard-gravity.ts.
 */
export const QUANTITIES: Readonly<Record<QuantityKind, Quantity>> = {
  time: {
    name: 'a time',
    families: [
      family(unit('s', 0), unit('ms', -3), unit('µs', -6), unit('ns', -9)),
      scaled(60, 1, unit('min', 0)),
      scaled(3600, 1, unit('h', 0)),
    ],
  },
  frequency: {
    name: 'a frequency',
    families: [
      family(unit('MHz', 6), unit('kHz', 3, 'khz'), unit('Hz', 0, 'hz'), unit('mHz', -3)),
      scaled(1, 2 * Math.PI, unit('rad/s', 0)),
    ],
  },
  'angular rate': {
    name: 'a rate of turning',
    families: [
      family(unit('rad/s', 0), unit('mrad/s', -3)),
      scaled(Math.PI, 180, unit('°/s', 0, 'deg/s')),
      scaled(Math.PI, 30, unit('r/min', 0, 'rpm')),
    ],
  },
  length: {
    name: 'a length',
    families: [
      family(
        unit('km', 3),
        unit('m', 0),
        typed('cm', -2),
        unit('mm', -3),
        unit('µm', -6),
        unit('nm', -9),
        unit('pm', -12),
      ),
    ],
  },
  mass: {
    name: 'a mass',
    families: [family(unit('kg', 0), unit('g', -3), unit('mg', -6), unit('µg', -9), unit('ng', -12))],
  },
  acceleration: {
    name: 'an acceleration',
    families: [
      family(unit('m/s²', 0), unit('mm/s²', -3), unit('µm/s²', -6)),
      scaled(G_N, 1, unit('g', 0, 'gₙ', 'gn', 'g_n'), unit('mg', -3, 'mgₙ', 'mgn'), unit('µg', -6, 'µgₙ', 'µgn')),
    ],
  },
  angle: {
    name: 'an angle',
    families: [
      scaled(Math.PI, 180, unit('°', 0, 'deg', 'degree', 'degrees')),
      family(unit('rad', 0), unit('mrad', -3), unit('µrad', -6)),
    ],
  },
  stiffness: {
    name: 'a stiffness',
    families: [
      family(unit('MN/m', 6), unit('kN/m', 3), typed('N/mm', 3), unit('N/m', 0), unit('mN/m', -3), unit('µN/m', -6)),
    ],
  },
  damping: {
    name: 'a damping coefficient',
    families: [
      family(
        unit('kN·s/m', 3, 'kNs/m'),
        unit('N·s/m', 0, 'Ns/m'),
        unit('mN·s/m', -3, 'mNs/m'),
        unit('µN·s/m', -6, 'µNs/m'),
      ),
    ],
  },
  speed: {
    name: 'a speed',
    families: [
      family(unit('km/s', 3), unit('m/s', 0), typed('cm/s', -2), unit('mm/s', -3), unit('µm/s', -6)),
      scaled(1000, 3600, unit('km/h', 0)),
    ],
  },
  temperature: {
    name: 'a temperature',
    families: [{ times: 1, per: 1, offset: 273.15, units: [unit('°C', 0, 'C', 'degC')] }, family(unit('K', 0))],
  },
  dimensionless: {
    name: 'a number',
    families: [family(unit('', 0)), family(unit('%', -2))],
  },
  percent: {
    name: 'a percentage',
    families: [family(unit('%', -2))],
  },
};

/** A unit and the family that gives it its meaning. */
export interface FoundUnit {
  readonly family: UnitFamily;
  readonly unit: Unit;
}

const SPELLINGS: ReadonlyMap<string, ReadonlyMap<string, FoundUnit>> = new Map(
  Object.entries(QUANTITIES).map(([kind, { families }]) => [kind, spellingsOf(families)]),
);

/** The symbols that may be typed for a kind, as printed. */
export function symbolsOf(kind: QuantityKind): string[] {
  return QUANTITIES[kind].families.flatMap(({ units }) => units.map(({ symbol }) => symbol));
}

/** The unit of a kind that a text means; undefined: none. */
export function findUnit(kind: QuantityKind, text: string): FoundUnit | undefined {
  return SPELLINGS.get(kind)?.get(oneSpelling(text));
}

/** What people type alike, in one way: µ, μ and a leading u; ² and ^2; any multiplication sign; no spaces. */
function oneSpelling(text: string): string {
  return text
    .replace(/\s/gu, '')
    .replace(/μ/gu, 'µ')
    .replace(/^u(?=.)/u, 'µ')
    .replace(/²|\^2/gu, '2')
    .replace(/[⋅*×]/gu, '·')
    .replace(/º/gu, '°');
}

function spellingsOf(families: readonly UnitFamily[]): Map<string, FoundUnit> {
  const found = new Map<string, FoundUnit>();
  for (const each of families)
    for (const one of each.units)
      for (const name of [one.symbol, ...one.aliases]) found.set(oneSpelling(name), { family: each, unit: one });
  return found;
}

function unit(symbol: string, exponent: number, ...aliases: string[]): Unit {
  return { symbol, exponent, aliases };
}

function typed(symbol: string, exponent: number): Unit {
  return { symbol, exponent, aliases: [], typedOnly: true };
}

function family(...units: Unit[]): UnitFamily {
  return { times: 1, per: 1, offset: 0, units };
}

function scaled(times: number, per: number, ...units: Unit[]): UnitFamily {
  return { times, per, offset: 0, units };
}
