/** The tests of simulated.test.ts on more of the right examples and more faults. */
import './simulated.test.ts';
