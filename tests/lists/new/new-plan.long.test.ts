/** The tests of new-plan.test.ts on many sets of answers. */
import './new-plan.test.ts';
