/** The tests of worst-rows.test.ts on more shops. */
import './worst-rows.test.ts';
