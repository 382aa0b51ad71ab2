/** The tests of bench-lists.test.ts on every example. */
import './bench-lists.test.ts';
