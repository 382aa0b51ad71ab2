/** The tests of pack.test.ts on all there is, not on a share. */
import './pack.test.ts';
