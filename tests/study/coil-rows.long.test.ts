/** The tests of coil-rows.test.ts on all there is, not on a tenth. */
import './coil-rows.test.ts';
