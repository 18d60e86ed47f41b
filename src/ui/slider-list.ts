import { html } from 'lit';
import { live } from 'lit/directives/live.js';
import type { QuantityKind } from '../units/unit-table.ts';
import './quantity-slider.ts';

/** What a sheet needs to know to show one slider. Values are SI. */
export interface SliderSpec {
  /** Name of its setting. */
  readonly name: string;
  readonly label: string;
  readonly kind: QuantityKind;
  readonly unit?: string | undefined;
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly spacing: 'linear' | 'logarithmic';
  readonly limitReason?: string | undefined;
}

/** Sliders one under the other, as the sheets show them. What was refused goes back to where it stood: hence `live`. */
export function sliderList(sliders: readonly SliderSpec[]) {
  return sliders.map(
    (slider) => html`<quantity-slider
      .name=${slider.name}
      .label=${slider.label}
      .kind=${slider.kind}
      .unit=${slider.unit}
      .value=${live(slider.value)}
      .low=${slider.low}
      .high=${slider.high}
      .spacing=${slider.spacing}
      .limitReason=${slider.limitReason}
    ></quantity-slider>`,
  );
}
