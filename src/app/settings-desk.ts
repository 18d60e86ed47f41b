import { changeOf } from '../session/bench-limits.ts';
import { handlingFrom } from '../session/handling-values.ts';
import { ROOM_AIR, type SensingDirection } from '../session/settings.ts';
import type { Setting } from '../ui/ui-events.ts';
import { quantityText } from '../units/quantity-text.ts';
import type { PageDoor } from './page-door.ts';
import { gravityAt, PLACES, placeOf } from './places.ts';
import { chooseOfRecord } from './record-in-hand.ts';
import { isLimited } from './slider-specs.ts';

export interface SettingErrands {
  /** A run of another bench may have begun. */
  readonly settled: () => void;
  /** A line is shown or hidden. */
  readonly line: (line: string, shown: boolean) => void;
  readonly slow: (slowdown: number) => void;
  readonly trigger: (name: string, value: Setting['value']) => void;
  /** A field of a handling was changed: what goes on by it follows. */
  readonly field: (name: string) => void;
}

/** Settings by their names, each to where it belongs: the session, the place, the trigger, the fields of the handling. */
export class SettingsDesk {
  readonly #page: PageDoor;
  readonly #errands: SettingErrands;
  /** The rider that slides: all of its way is one step of undo. */
  #sliding: string | undefined;
  /** Gap of the stops when they were taken out [m]. */
  #gapM: number | undefined;
  /** Gravity before a push in weightless space [m/s²], to come back with the next handling. */
  #gravityBeforeSpace: number | undefined;

  constructor(page: PageDoor, errands: SettingErrands) {
    this.#page = page;
    this.#errands = errands;
  }

  set({ name, value, final }: Setting): void {
    const page = this.#page;
    const { session, eventRunS, state } = page;
    switch (name) {
      case 'slowdown':
        this.#errands.slow(Number(value));
        return;
      case 'readout.bits':
        session.set({ readout: { ...session.settings.readout, bits: Number(value) || undefined } }, false, eventRunS);
        return;
      case 'readout.on':
        this.#errands.line('reported', value === true);
        return;
      case 'air':
        session.set({ air: value === true ? ROOM_AIR : null }, false, eventRunS);
        return;
      case 'stops':
        this.#gapM = session.settings.gapM ?? this.#gapM;
        session.set({ gapM: value === true ? (this.#gapM ?? session.bench.settings.gapM) : null }, false, eventRunS);
        return;
      case 'senses':
        session.set({ senses: value as SensingDirection }, false, eventRunS);
        // What is shaken next should be felt.
        page.change({ fields: { ...state.fields, 'shake.direction': String(value) } });
        this.#errands.settled();
        return;
      case 'springBy':
        page.change({ springBy: value === 'stiffness' ? 'stiffness' : 'frequency' });
        return;
      case 'unit':
        page.change({ unit: value === 'm/s2' ? 'm/s2' : 'g_n' });
        return;
      case 'drag':
        page.change({ drag: value === true ? 'mark' : 'pull' });
        return;
      case 'range':
        page.change({ range: value === 'automatic' ? 'automatic' : Number(value) });
        return;
      case 'place':
      case 'latitude':
      case 'placeHeight':
        this.#moveTo(name, value);
        return;
    }
    if (isLimited(name)) {
      session.set(changeOf(session.settings, name, Number(value)), this.#sliding === name, eventRunS);
      this.#sliding = final ? undefined : name;
      if (name === 'gravity') page.change({ place: '', latitude: Number.NaN, placeHeightM: Number.NaN });
      if (name === 'drop.height' && final) this.#reposition();
    } else if (name.startsWith('record.')) {
      if (state.record) page.change({ record: chooseOfRecord(state.record, name, String(value)) });
    } else if (name.startsWith('trigger.')) {
      this.#errands.trigger(name, value);
    } else if (typeof value !== 'boolean') {
      page.change({ fields: { ...state.fields, [name]: value } });
      if (final) this.#errands.field(name);
    }
  }

  #moveTo(name: 'place' | 'latitude' | 'placeHeight', value: Setting['value']): void {
    const { session, eventRunS, state } = this.#page;
    const found = name === 'place' ? PLACES.find(({ id }) => id === value) : undefined;
    const latitude = found ? found.latitude : name === 'latitude' ? Number(value) : state.latitude;
    const heightM = found ? found.heightM : name === 'placeHeight' ? Number(value) : state.placeHeightM;
    this.#page.change({ place: found?.id ?? 'typed', latitude, placeHeightM: heightM });
    const place = found ?? { id: 'typed', name: 'typed', latitude: latitude || 0, heightM: heightM || 0 };
    session.set({ gravityMS2: gravityAt(place) }, false, eventRunS);
  }

  /** Out in weightless space, or back to the gravity from before. */
  inSpace(wanted: boolean): void {
    const { session, eventRunS } = this.#page;
    const { gravityMS2 } = session.settings;
    if (wanted && gravityMS2 !== 0) {
      session.set({ gravityMS2: 0 }, false, eventRunS);
      this.#page.change({ place: 'space' });
      this.#gravityBeforeSpace = gravityMS2;
    } else if (!wanted && this.#gravityBeforeSpace !== undefined && gravityMS2 === 0) {
      const back = this.#gravityBeforeSpace;
      session.set({ gravityMS2: back }, false, eventRunS);
      this.#page.change({
        place: placeOf(back),
        notice: `Back from weightless space: gravity is ${quantityText(back, 'acceleration', 'm/s²')} again.`,
      });
      this.#gravityBeforeSpace = undefined;
    }
  }

  /** Another run stands on the bench: it has a gravity of its own. */
  elsewhere(): void {
    this.#gapM = undefined;
    if (this.#page.session.settings.gravityMS2 !== 0) this.#gravityBeforeSpace = undefined;
  }

  /** The clamp follows the drop height when it holds the housing. */
  #reposition(): void {
    const { session, eventRunS, state } = this.#page;
    if (session.motionShown.kind !== 'held') return;
    const hold = handlingFrom('hold', state.fields, undefined);
    if (hold) session.handle(hold, eventRunS);
  }
}
