/** The tests of answering.test.ts, all of them. */
import './answering.test.ts';
