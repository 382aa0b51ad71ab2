/** The tests of scale.test.ts on all there is, not on a share. */
import './scale.test.ts';
