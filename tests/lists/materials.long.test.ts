/** The tests of materials.test.ts on all there is, not on a share. */
import './materials.test.ts';
