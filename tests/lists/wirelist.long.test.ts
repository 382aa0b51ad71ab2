/** The tests of wirelist.test.ts on all there is, not on a share. */
import './wirelist.test.ts';
