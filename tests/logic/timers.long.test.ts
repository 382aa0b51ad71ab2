/** The tests of timers.test.ts on all there is, not on a tenth. */
import './timers.test.ts';
