/** The tests of random.test.ts on all there is, not on a share. */
import './random.test.ts';
