/** The tests of mend.test.ts with all the mistakes there are. */
import './mend.test.ts';
