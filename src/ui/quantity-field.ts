import { customElement, property } from 'lit/decorators.js';
import { quantityText, readField, splitQuantity } from '../units/quantity-text.ts';
import type { QuantityKind } from '../units/unit-table.ts';
import { TypedField } from './typed-field.ts';

/** A quantity with its unit that can be typed over, "25.0 g". Takes any unit of its kind: "50 mg". */
@customElement('quantity-field')
export class QuantityField extends TypedField {
  @property() kind: QuantityKind = 'dimensionless';
  /** Family of units to print in; undefined: the kind's first. */
  @property() unit: string | undefined;
  /** SI. */
  @property({ type: Number }) low = Number.NEGATIVE_INFINITY;
  @property({ type: Number }) high = Number.POSITIVE_INFINITY;
  /** Why nothing beyond the ends is taken, as a sentence. */
  @property({ attribute: 'limit-reason' }) limitReason: string | undefined;

  protected override text(): string {
    return quantityText(this.value, this.kind, this.unit);
  }

  protected override shown() {
    return splitQuantity(this.text());
  }

  protected override read(typed: string) {
    return readField(typed, this, this.shown().unit);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'quantity-field': QuantityField;
  }
}
