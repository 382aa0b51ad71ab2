/** The tests of mending.test.ts on all there is, not on a share. */
import './mending.test.ts';
