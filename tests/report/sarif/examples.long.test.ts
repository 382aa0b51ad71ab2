/** The tests of examples.test.ts with every example. */
import './examples.test.ts';
