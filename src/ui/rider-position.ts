/** Where a brass rider stands on its rule. Shares run from 0 (left end) to 1 (right end). */
export interface RuleRange {
  readonly low: number;
  readonly high: number;
  /** Equal lengths for equal differences, or for equal ratios (then `low` > 0). */
  readonly spacing: 'linear' | 'logarithmic';
}

/** Share of the rule at which a value stands; beyond an end, that end. */
export function riderShare(value: number, range: RuleRange): number {
  const { low, high } = range;
  const share =
    range.spacing === 'linear' ? (value - low) / (high - low) : Math.log(value / low) / Math.log(high / low);
  return Math.min(1, Math.max(0, share));
}

/** Value at a share of the rule, to three significant digits of the range (the field takes finer ones); ends are exact. */
export function riderValue(share: number, range: RuleRange): number {
  const { low, high } = range;
  if (share <= 0) return low;
  if (share >= 1) return high;
  if (range.spacing === 'logarithmic') return within(Number((low * (high / low) ** share).toPrecision(3)), range);
  const grain = 10 ** (Math.floor(Math.log10(high - low)) - 2);
  const steps = Math.round((low + (high - low) * share) / grain);
  // Through decimal text, so that 118 · 0.001 is written 0.118.
  return within(Number((steps * grain).toPrecision(12)), range);
}

/** A step by key: a hundredth of the rule, a tenth with `coarse`. */
export function riderStep(value: number, range: RuleRange, direction: 1 | -1, coarse: boolean): number {
  return riderValue(riderShare(value, range) + direction * (coarse ? 0.1 : 0.01), range);
}

function within(value: number, range: RuleRange): number {
  return Math.min(range.high, Math.max(range.low, value));
}

export interface RuleMark {
  readonly share: number;
  /** Drawn longer. */
  readonly major: boolean;
}

/** Marks on the rule: tenths when linear; 1, 2 … 9 of each decade when logarithmic, decades (or the ends) longer. */
export function ruleMarks(range: RuleRange): readonly RuleMark[] {
  if (range.spacing === 'linear') {
    return Array.from({ length: 21 }, (_, index) => ({ share: index / 20, major: index % 10 === 0 }));
  }
  const marks: RuleMark[] = [];
  for (let decade = Math.floor(Math.log10(range.low)); decade <= Math.ceil(Math.log10(range.high)); decade += 1) {
    for (let digit = 1; digit <= 9; digit += 1) {
      const value = Number(`${digit}e${decade}`);
      if (value >= range.low && value <= range.high)
        marks.push({ share: riderShare(value, range), major: digit === 1 });
    }
  }
  return marks;
}
