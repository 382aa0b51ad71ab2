/** The tests of single-mistakes.test.ts on all there is, not on a tenth. */
import './single-mistakes.test.ts';
