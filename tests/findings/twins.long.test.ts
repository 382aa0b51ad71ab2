/** The tests of twins.test.ts on all there is, not on a share. */
import './twins.test.ts';
