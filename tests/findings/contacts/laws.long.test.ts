/** The tests of laws.test.ts on all there is, not on a share. */
import './laws.test.ts';
