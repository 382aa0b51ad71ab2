/** All of the tests of nearest-change.test.ts. */
import './nearest-change.test.ts';
