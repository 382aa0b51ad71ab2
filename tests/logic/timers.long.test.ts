/** The tests of timers.test.ts on all there is, not on a share. */
import './timers.test.ts';
