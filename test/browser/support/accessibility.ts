import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';

/** WCAG 2.0 to 2.2, levels A and AA. */
const LEVELS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** What axe-core finds wrong in the page as it stands, one line each: rule, what, and where. Empty is well. */
export async function accessibilityFaults(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page }).withTags(LEVELS).analyze();
  return violations.flatMap(({ id, help, nodes }) => nodes.map((node) => `${id}: ${help}: ${node.target.join(' ')}`));
}
