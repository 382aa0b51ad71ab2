/** The tests of judged.test.ts with more slips in each shop. */
import './judged.test.ts';
