/** What a damper does to the mass when it swings at ω [rad/s]: a force −c·v − m_a·a − k·x. */
export interface Damper {
  /** c [N·s/m] */
  damping(omega: number): number;
  /** m_a: what moves along with the mass [kg] */
  addedMass(omega: number): number;
  /** k: a spring that is there only in motion [N/m] */
  spring(omega: number): number;
}

const nothing = (): number => 0;

export const NO_DAMPER: Damper = { damping: nothing, addedMass: nothing, spring: nothing };

export const BY_DAMPING_ALONE = { addedMass: nothing, spring: nothing };
