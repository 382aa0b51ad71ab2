/** The tests of faults.test.ts on every example. */
import './faults.test.ts';
