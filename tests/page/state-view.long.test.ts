/** The tests of state-view.test.ts on all there is, not on a share. */
import './state-view.test.ts';
