/** The tests of situations.test.ts on every plan that is named there. */
import './situations.test.ts';
