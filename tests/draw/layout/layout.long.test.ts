/** The tests of layout.test.ts on all there is, not on a tenth. */
import './layout.test.ts';
