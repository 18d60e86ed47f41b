/**
 * The rules that join several keys: order of instants, names given once, keys that need or exclude one
 * another. They look at what could be read and stay silent about what is faulty already.
 */
import { quoted, type Report } from './fault.ts';
import type { ChangeValue, ElementValue, LooseScenario } from './keys.ts';
import { checkMotions, type Findings } from './motion-rules.ts';
import type { Loose } from './schema.ts';
import { checkWork } from './work-rules.ts';

export function checkRules(scenario: LooseScenario, findings: Findings): void {
  checkWork(scenario, findings.report);
  checkSize(scenario.housing?.size ?? [], findings.report);
  checkElements(scenario.elements ?? [], findings);
  checkMotions(scenario.motions ?? [], findings);
  checkChanges(scenario.changes ?? [], scenario.elements ?? [], findings);
}

/** Longest over shortest edge of the housing [–]: beyond, its moments of inertia differ by more than a million. */
const LARGEST_ASPECT = 1000;

function checkSize(size: readonly (number | undefined)[], report: Report): void {
  const edges = size.filter((edge) => edge !== undefined);
  const [least, most] = [Math.min(...edges), Math.max(...edges)];
  if (most > least * LARGEST_ASPECT) {
    report('housing.size', `${most} m beside ${least} m`, `no edge over ${LARGEST_ASPECT} times another`);
  }
}

function checkElements(elements: readonly (Loose<ElementValue> | undefined)[], findings: Findings): void {
  const first = new Map<string, number>();
  for (const [i, element] of elements.entries()) {
    if (element === undefined) continue;
    const path = `elements[${i}]`;
    if (element.name !== undefined) {
      const earlier = first.get(element.name);
      if (earlier === undefined) first.set(element.name, i);
      else
        findings.report(
          `${path}.name`,
          `${quoted(element.name)} again`,
          `a name other than that of elements[${earlier}]`,
        );
    }
    checkElement(element, path, findings);
  }
}

function checkElement(element: Loose<ElementValue>, path: string, findings: Findings): void {
  const { report } = findings;
  checkReadout(element.readout, `${path}.readout`, findings);
  if (element.thermalNoise === true && element.mass === undefined && !findings.faulty(`${path}.mass`)) {
    report(`${path}.mass`, 'nothing', 'the proof mass in kg, which thermalNoise needs');
  }
  const { gap, start, modes } = element;
  if (gap !== undefined && start?.deflection !== undefined && Math.abs(start.deflection) > gap) {
    report(`${path}.start.deflection`, `${start.deflection}`, `from -${gap} to ${gap} m, between the stops`);
  }
  if (modes === undefined) return;
  checkModes(modes, element.staticRemainder ?? 0, `${path}.modes`, report);
  for (const key of ['naturalFrequency', 'dampingRatio'] as const) {
    const [own, ofFirst] = [element[key], modes[0]?.[key]];
    if (own !== undefined && ofFirst !== undefined && own !== ofFirst) {
      report(`${path}.${key}`, `${own}`, `${ofFirst}, that of modes[0]`);
    }
  }
}

/** A steady specific force deflects the pick-off against itself, and a push at the pick-off moves it: else it could not read. */
function checkModes(
  modes: readonly (Loose<NonNullable<ElementValue['modes']>[number]> | undefined)[],
  remainder: number,
  path: string,
  report: Report,
): void {
  let compliance = remainder;
  let moves = false;
  for (const mode of modes) {
    if (mode?.naturalFrequency === undefined || mode.participation === undefined || mode.shape === undefined) return;
    const omega = 2 * Math.PI * mode.naturalFrequency;
    compliance += (mode.shape * mode.participation) / (omega * omega);
    moves ||= mode.shape !== 0;
  }
  if (!(compliance > 0)) {
    const sum = 'the sum of shape·participation/ω² over the modes, plus staticRemainder';
    report(path, `a static deflection of ${compliance} m per m/s²`, `above 0: ${sum}`);
  }
  if (!moves) report(path, 'only shapes of 0', 'a mode whose shape at the pick-off is not 0');
}

function checkReadout(readout: Loose<ElementValue['readout']>, path: string, { report, faulty }: Findings): void {
  if (readout?.bits !== undefined && readout.range === undefined && !faulty(`${path}.range`)) {
    report(`${path}.range`, 'nothing', 'the full scale in m/s², which bits needs');
  }
}

function checkChanges(
  changes: readonly (Loose<ChangeValue> | undefined)[],
  elements: readonly (Loose<ElementValue> | undefined)[],
  findings: Findings,
): void {
  let latest = 0;
  for (const [i, change] of changes.entries()) {
    if (change === undefined) continue;
    const path = `changes[${i}]`;
    if (change.at !== undefined && change.at < latest)
      findings.report(`${path}.at`, `${change.at}`, `not before ${latest} s, the change before`);
    latest = Math.max(change.at ?? 0, latest);
    checkChange(change, path, elements, findings);
  }
}

function checkChange(
  change: Loose<ChangeValue>,
  path: string,
  elements: readonly (Loose<ElementValue> | undefined)[],
  findings: Findings,
): void {
  const { report, faulty } = findings;
  const kinds = (['gravity', 'set', 'pad'] as const).filter(
    (key) => change[key] !== undefined || faulty(`${path}.${key}`),
  );
  if (kinds.length !== 1)
    report(
      path,
      kinds.length === 0 ? 'none of gravity, set, pad' : kinds.join(' and '),
      'exactly one of gravity, set (with element), pad',
    );
  if (change.element === undefined) {
    if (kinds.includes('set') && !faulty(`${path}.element`))
      report(`${path}.element`, 'nothing', 'the name of the element to set');
    return;
  }
  if (!kinds.includes('set')) return report(`${path}.element`, quoted(change.element), 'only beside set');
  const element = elements.find((candidate) => candidate?.name === change.element);
  if (element === undefined) {
    const names = elements.flatMap((candidate) => (candidate?.name === undefined ? [] : [quoted(candidate.name)]));
    return report(`${path}.element`, quoted(change.element), `the name of an element: ${names.join(' or ')}`);
  }
  checkReadout(change.set?.readout, `${path}.set.readout`, findings);
  if (change.set?.readout !== undefined && element.readout === undefined) {
    report(`${path}.set.readout`, 'settings', `none: element ${quoted(element.name ?? '')} has no readout`);
  }
}
