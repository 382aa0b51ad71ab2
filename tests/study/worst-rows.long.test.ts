/** The tests of worst-rows.test.ts on thousands of shops. */
import './worst-rows.test.ts';
