/** The tests of new-terminal.test.ts, all of them. */
import './new-terminal.test.ts';
