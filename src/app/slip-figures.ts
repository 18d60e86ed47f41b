import { type ReadingUnit, unitName, unitSize } from '../plot/reading-format.ts';
import type { SpanFigures } from '../plot/span-figures.ts';
import type { SpanFigures as SlipFigures } from '../ui/span-figures.ts';
import { quantityText } from '../units/quantity-text.ts';

/** Smaller than this share of the peak is rounding [–]. */
const ROUNDING = 1e-9;

/** Figures of a marked span as the slip under the tape prints them. */
export function slipFigures(figures: SpanFigures, line: string, unit: ReadingUnit): SlipFigures {
  const { minimum, maximum } = figures;
  const peak = Math.abs(minimum.value) > Math.abs(maximum.value) ? minimum.value : maximum.value;
  // Rounding of the values themselves is no slope and no area.
  const least = Math.abs(peak) * ROUNDING;
  const number = (value: number, over: number): string =>
    quantityText(Math.abs(value) < least * over ? 0 : value, 'dimensionless');
  return {
    line,
    kind: 'acceleration',
    unit: unitName(unit),
    durationS: figures.durationS,
    mean: figures.mean,
    peak,
    rms: figures.rms,
    slope: figures.slope,
    area: figures.area,
    slopeText: `${number(figures.slope / unitSize(unit), 1 / figures.durationS / unitSize(unit))} ${unitName(unit)}/s`,
    areaText: `${number(figures.area, figures.durationS)} m/s`,
  };
}
