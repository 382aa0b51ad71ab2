/** The tests of invariance.test.ts on all there is, not on a share. */
import './invariance.test.ts';
