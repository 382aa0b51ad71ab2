/** The tests of followed.test.ts on all there is, not on a tenth. */
import './followed.test.ts';
