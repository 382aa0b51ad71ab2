/** The test of one-core-wrong.test.ts on all its mistakes. */
import './one-core-wrong.test.ts';
