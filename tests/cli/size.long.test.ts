/** The tests of size.test.ts, all of them. */
import './size.test.ts';
