/** All of the tests of hunt.test.ts. */
import './hunt.test.ts';
