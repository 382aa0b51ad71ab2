/** The tests of new.test.ts, all of them. */
import './new.test.ts';
