import type { ElementSpec } from '../../src/contract/run.ts';
import { Element, type ElementState, type StopHit } from '../../src/element/element.ts';
import { elementSpec } from '../support/run-spec.ts';

export type Signal = (timeS: number) => number;

export const none: Signal = () => 0;

export function newElement(
  spec: Partial<ElementSpec>,
  tickS: number,
  seed = 1,
  temperatureK = 293.15,
  index = 0,
): Element {
  return new Element(elementSpec(spec), { seed, index, temperatureK, tickS });
}

/** Takes an element through one tick under a smooth force and softening. */
export function tickOnce(element: Element, tick: number, tickS: number, force: Signal, spin: Signal = none): void {
  const [start, middle, end] = [tick * tickS, (tick + 0.5) * tickS, (tick + 1) * tickS];
  element.beginTick(tick);
  element.advance(0, tickS, force(start), force(middle), force(end), spin(start), spin(middle), spin(end));
  element.endTick();
}

/** Settles it at rest under the force at 0 (or as its start says) and runs it; `after` sees each tick's end. */
export function drive(
  element: Element,
  ticks: number,
  tickS: number,
  force: Signal,
  after: (tick: number) => void = () => undefined,
  spin: Signal = none,
): void {
  element.settle(force(0), spin(0));
  for (let tick = 0; tick < ticks; tick += 1) {
    tickOnce(element, tick, tickS, force, spin);
    after(tick);
  }
}

export function stateAt(element: Element, tauS: number): ElementState {
  const out: ElementState = { deflection: 0, velocity: 0, reading: 0, onStop: 0 };
  element.at(tauS, out);
  return out;
}

/** A parabola in time through a signal at the start, middle and end of each interval of `widthS`. */
export function parabolas(signal: Signal, widthS: number): Signal {
  return (timeS) => {
    const k = Math.min(Math.floor(timeS / widthS + 1e-9), Math.round(timeS / widthS + 1e9));
    const u = timeS / widthS - k;
    const [a, b, c] = [signal(k * widthS), signal((k + 0.5) * widthS), signal((k + 1) * widthS)];
    return a + u * (4 * b - 3 * a - c + 2 * u * (a - 2 * b + c));
  };
}

export interface StampedHit extends StopHit {
  readonly timeS: number;
}

/** All touches of a run, stamped with run time. */
export function hitsOf(element: Element, ticks: number, tickS: number, force: Signal, spin?: Signal): StampedHit[] {
  const hits: StampedHit[] = [];
  drive(
    element,
    ticks,
    tickS,
    force,
    (tick) => {
      for (const hit of element.stopHits) hits.push({ ...hit, timeS: tick * tickS + hit.tauS });
    },
    spin,
  );
  return hits;
}
