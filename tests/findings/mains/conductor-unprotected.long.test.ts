/** The tests of conductor-unprotected.test.ts on all there is, not on a share. */
import './conductor-unprotected.test.ts';
