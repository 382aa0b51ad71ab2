/** The tests of sheet.test.ts, with those that make a whole sheet each. */
import './sheet.test.ts';
