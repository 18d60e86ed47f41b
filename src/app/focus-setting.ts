import type { QuantityField } from '../ui/quantity-field.ts';

/** Puts the focus into the field of a setting that stands on the bench itself, by its name (`damping`, `drop.height`). */
export async function focusSetting(host: HTMLElement, name: string): Promise<void> {
  const layout = host.querySelector('bench-layout');
  if (!layout) return;
  layout.settingsOpen = true;
  await layout.updateComplete;
  const inside =
    name === 'drop.height'
      ? host.querySelector('handling-words')
      : [...host.querySelectorAll('quantity-slider')].find((slider) => slider.name === name);
  await inside?.updateComplete;
  const field = inside?.renderRoot.querySelector<QuantityField>('quantity-field');
  await field?.updateComplete;
  field?.scrollIntoView({ block: 'nearest' });
  field?.focus();
}
