/** The tests of meter-sheet.test.ts on every example. */
import './meter-sheet.test.ts';
