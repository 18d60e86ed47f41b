/**
 * The only door to transcendental functions for headless rooms. `Math.sin`, `exp`, `pow` … differ in the
 * last bits between JavaScript engines and versions, and a run must give the same bits everywhere; these
 * are one pure-JavaScript library. Arguments in radians; errors about one unit in the last place.
 */
import acos from '@stdlib/math-base-special-acos';
import asin from '@stdlib/math-base-special-asin';
import atan2 from '@stdlib/math-base-special-atan2';
import cos from '@stdlib/math-base-special-cos';
import cosh from '@stdlib/math-base-special-cosh';
import exp from '@stdlib/math-base-special-exp';
import expm1 from '@stdlib/math-base-special-expm1';
import ln from '@stdlib/math-base-special-ln';
import pow from '@stdlib/math-base-special-pow';
import sin from '@stdlib/math-base-special-sin';
import sinh from '@stdlib/math-base-special-sinh';
import tan from '@stdlib/math-base-special-tan';

export { acos, asin, atan2, cos, cosh, exp, expm1, ln, pow, sin, sinh, tan };
