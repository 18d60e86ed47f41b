import { css, nothing, type SVGTemplateResult, svg } from 'lit';
import type { SketchPoint } from '../contract/lesson.ts';
import type { QuantityKind } from '../units/unit-table.ts';
import { type SketchFrame, ticks, timeUnit, xOf, yOf } from './sketch-frame.ts';

/** A stretch of the pen's line; NaN where the tape has nothing. */
export type Ink = readonly SketchPoint[];

/** One tick for so many pixels, upward and along. */
const TICK_EVERY_PX = { value: 24, time: 40 } as const;

/** The ruled ground, the learner's pencil and, over it, the pen's ink. */
export function sketchPicture(frame: SketchFrame, points: readonly SketchPoint[], ink: Ink = []): SVGTemplateResult {
  const { axes, leftPx, rightPx, topPx, bottomPx } = frame;
  const unit = timeUnit(axes);
  const values = ticks(
    axes.low,
    axes.high,
    axes.quantity as QuantityKind,
    axes.unit,
    (bottomPx - topPx) / TICK_EVERY_PX.value,
  );
  const times = ticks(axes.fromS, axes.toS, 'time', unit, (rightPx - leftPx) / TICK_EVERY_PX.time);
  const zeroPx = xOf(frame, 0);
  return svg`
    ${values.map(({ value, text }) => {
      const y = yOf(frame, value);
      const zero = value === 0;
      return svg`<line class=${zero ? 'zero' : 'ruling'} x1=${leftPx} x2=${rightPx} y1=${y} y2=${y} />
        <text class="tick" x=${leftPx - 6} y=${y + 4} text-anchor="end">${zero ? `0 ${axes.unit}` : text}</text>`;
    })}
    ${times.map(({ value, text }) => {
      const x = xOf(frame, value);
      return svg`<line class="ruling" x1=${x} x2=${x} y1=${bottomPx} y2=${bottomPx + 4} />
        <text class="tick" x=${x} y=${bottomPx + 16} text-anchor="middle">${text}</text>`;
    })}
    <text class="tick" x=${rightPx} y=${bottomPx + 31} text-anchor="end">${unit}</text>
    ${
      axes.fromS <= 0 && axes.toS >= 0
        ? svg`<line class="zero" x1=${zeroPx} x2=${zeroPx} y1=${topPx} y2=${bottomPx} />
          <text class="tick" x=${Math.max(2, zeroPx - 30)} y=${bottomPx + 31}>${axes.zero}</text>`
        : nothing
    }
    <svg x=${leftPx} y=${topPx} width=${rightPx - leftPx} height=${bottomPx - topPx}
      viewBox=${`${leftPx} ${topPx} ${rightPx - leftPx} ${bottomPx - topPx}`}>
      <path class="pencil" d=${path(frame, points)} />
      <path class="ink" d=${path(frame, ink)} />
    </svg>`;
}

function path(frame: SketchFrame, line: readonly SketchPoint[]): string {
  let pen = 'M';
  let text = '';
  for (const [timeS, value] of line) {
    if (Number.isNaN(value)) {
      pen = 'M';
      continue;
    }
    text += `${pen}${xOf(frame, timeS).toFixed(1)} ${yOf(frame, value).toFixed(1)}`;
    pen = 'L';
  }
  return text;
}

export const sketchPictureStyles = css`
  svg.sketch {
    display: block;
    width: 100%;
    overflow: visible;
  }
  .ruling {
    stroke: var(--hairline);
    stroke-width: 1;
  }
  .zero {
    stroke: var(--soft);
    stroke-width: 1;
  }
  .tick {
    fill: var(--text);
    font: 460 12.5px var(--plain);
  }
  .pencil,
  .ink {
    fill: none;
    stroke-linejoin: round;
    stroke-linecap: round;
  }
  .pencil {
    stroke: var(--pencil);
    stroke-width: 4.5;
    stroke-opacity: 0.72;
  }
  .ink {
    stroke: var(--ink);
    stroke-width: 1.8;
  }
`;
