/** The tests of apply-edits-random.test.ts on more plans. */
import './apply-edits-random.test.ts';
