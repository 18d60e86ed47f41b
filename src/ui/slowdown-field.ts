import { customElement } from 'lit/decorators.js';
import { parseSlowdown, slowdownText } from './dial-angle.ts';
import { TypedField } from './typed-field.ts';

/** How many times slower than true, typed: "20 times", "1/20". */
@customElement('slowdown-field')
export class SlowdownField extends TypedField {
  protected override text(): string {
    return `${slowdownText(this.value)} times`;
  }

  protected override shown() {
    return { number: slowdownText(this.value), unit: 'times' };
  }

  protected override read(typed: string) {
    const read = parseSlowdown(typed);
    return 'reason' in read ? read : { value: read.slowdown };
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'slowdown-field': SlowdownField;
  }
}
