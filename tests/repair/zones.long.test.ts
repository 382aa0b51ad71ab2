/** The test of zones.test.ts on more mistakes. */
import './zones.test.ts';
