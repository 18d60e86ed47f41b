/** Boltzmann constant [J/K], exact. Source: the SI, 9th edition (2019), defining constants. */
export const BOLTZMANN = 1.380649e-23;
