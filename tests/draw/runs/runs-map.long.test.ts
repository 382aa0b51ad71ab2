/** The tests of runs-map.test.ts on every plan. */
import './runs-map.test.ts';
