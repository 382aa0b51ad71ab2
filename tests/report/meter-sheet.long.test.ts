/** The tests of meter-sheet.test.ts, with those that run the command. */
import './meter-sheet.test.ts';
