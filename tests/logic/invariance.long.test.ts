/** The tests of invariance.test.ts on all there is, not on a tenth. */
import './invariance.test.ts';
