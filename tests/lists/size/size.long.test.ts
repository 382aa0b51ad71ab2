/** The tests of size.test.ts on all there is, not on a share. */
import './size.test.ts';
