/** The tests of single-mistakes.test.ts on all there is, not on a share. */
import './single-mistakes.test.ts';
