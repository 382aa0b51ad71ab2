/** The tests of tight.test.ts on all there is, not on a share. */
import './tight.test.ts';
