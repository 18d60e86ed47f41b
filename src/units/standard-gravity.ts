/**
 * Standard acceleration of free fall g_n [m/s²], exact.
 * Source: 3rd General Conference on Weights and Measures (1901), resolution 2; ISO 80000-3.
 */
export const G_N = 9.80665;
