/** Elements given by a design get its numbers; the others must have their own. */
import { designed } from '../design/design.ts';
import { pathTo } from './fault.ts';
import { type ElementValue, FIRST_MODE, type LooseScenario } from './keys.ts';
import type { Findings } from './motion-rules.ts';
import type { Loose } from './schema.ts';

/** Of these a design gives its own. */
const DESIGNED = ['naturalFrequency', 'dampingRatio', 'modes', 'staticRemainder', 'cubicStiffness', 'mass'] as const;

/** What a key has when it is left out. */
const LEFT_OUT: Readonly<Partial<Record<(typeof DESIGNED)[number], number>>> = {
  staticRemainder: 0,
  cubicStiffness: 0,
};

type Warn = (path: string, words: string) => void;

/** `faultyBelow` tells whether anything at or below a path is faulty already. */
export function withDesigns(
  scenario: LooseScenario,
  findings: Findings,
  faultyBelow: (path: string) => boolean,
  warn: Warn,
): LooseScenario {
  const elements = scenario.elements?.map((element, i) => {
    const path = pathTo('elements', i);
    if (element === undefined) return element;
    if (element.design === undefined) {
      if (!faultyBelow(`${path}.design`)) demandOwnNumbers(element, path, findings);
      return element;
    }
    for (const key of DESIGNED) {
      const value = element[key];
      if (value !== undefined && value !== LEFT_OUT[key])
        findings.report(`${path}.${key}`, 'a value beside design', 'nothing: the design gives it');
    }
    if (faultyBelow(`${path}.design`)) return element;
    return withDesign(element, element.design as NonNullable<ElementValue['design']>, scenario, path, findings, warn);
  });
  return { ...scenario, elements };
}

function demandOwnNumbers(element: Loose<ElementValue>, path: string, { report, faulty }: Findings): void {
  for (const [key, kind] of Object.entries(FIRST_MODE)) {
    const at = pathTo(path, key);
    if (element[key as keyof typeof FIRST_MODE] === undefined && !faulty(at))
      report(at, 'nothing', `${kind.allowed}, or a design`);
  }
}

function withDesign(
  element: Loose<ElementValue>,
  spec: NonNullable<ElementValue['design']>,
  { gravity, temperature, housing }: LooseScenario,
  path: string,
  { report }: Findings,
  warn: Warn,
): Loose<ElementValue> {
  const { axis } = element;
  const size = housing?.size?.filter((edge) => edge !== undefined);
  if (gravity === undefined || temperature === undefined || axis === undefined || size?.length !== 3) return element;
  const sensing = size.reduce((sum, edge, i) => sum + edge * Math.abs(axis[i] ?? 0), 0);
  const { design, faults } = designed(spec, {
    gravity,
    temperature,
    gap: element.gap,
    room: { longest: Math.max(...size), sensing },
  });
  if (design !== undefined) {
    for (const warning of design.warnings) warn(pathTo(`${path}.design`, warning.path), warning.words);
    return { ...element, ...design.element };
  }
  for (const fault of faults)
    report(fault.path === '' ? `${path}.design` : `${path}.design.${fault.path}`, fault.found, fault.allowed);
  return element;
}
