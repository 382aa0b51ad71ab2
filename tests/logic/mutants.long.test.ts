/** The tests of mutants.test.ts on all there is, not on a tenth. */
import './mutants.test.ts';
