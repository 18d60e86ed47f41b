import { html, type TemplateResult } from 'lit';
import { help, isHelped } from './help.ts';
import { sendSetting } from './ui-events.ts';

export interface Choice {
  readonly value: string;
  readonly words: string;
}

/** A short list to choose a setting's value from; its id is the setting's name, for the label. */
export function settingChoice(
  from: HTMLElement,
  name: string,
  chosen: string,
  choices: readonly Choice[],
): TemplateResult {
  const choose = (event: Event): void =>
    sendSetting(from, { name, value: (event.target as HTMLSelectElement).value, final: true });
  return html`<select id=${name} ${help(isHelped(name) ? name : undefined)} @change=${choose}>
    ${choices.map(({ value, words }) => html`<option value=${value} .selected=${value === chosen}>${words}</option>`)}
  </select>`;
}

/** A setting that is on or off, with its words. */
export function settingCheck(from: HTMLElement, name: string, on: boolean, words: string): TemplateResult {
  const check = (event: Event): void =>
    sendSetting(from, { name, value: (event.target as HTMLInputElement).checked, final: true });
  return html`<label class="check"
    ><input type="checkbox" ${help(isHelped(name) ? name : undefined)} .checked=${on} @change=${check} />${words}</label
  >`;
}
