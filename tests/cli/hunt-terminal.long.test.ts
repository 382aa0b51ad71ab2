/** All of the tests of hunt-terminal.test.ts. */
import './hunt-terminal.test.ts';
