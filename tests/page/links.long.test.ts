/** The tests of links.test.ts on all there is, not on a share. */
import './links.test.ts';
