/** The tests of random.test.ts on all there is, not on a tenth. */
import './random.test.ts';
