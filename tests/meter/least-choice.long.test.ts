/** The tests of least-choice.test.ts, the large problems with them. */
import './least-choice.test.ts';
