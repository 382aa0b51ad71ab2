/** The tests of coil-rows.test.ts on all there is, not on a share. */
import './coil-rows.test.ts';
