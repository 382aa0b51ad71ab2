/** The tests of mutants.test.ts on all there is, not on a share. */
import './mutants.test.ts';
