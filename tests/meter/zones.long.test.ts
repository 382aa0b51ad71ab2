/** The tests of zones.test.ts on a larger shop and more faults. */
import './zones.test.ts';
