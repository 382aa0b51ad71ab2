/** The tests of simulated.test.ts on every right example. */
import './simulated.test.ts';
