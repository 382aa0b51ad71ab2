/** All that was found, and the commands that take their time. */
import './cases.test.ts';
