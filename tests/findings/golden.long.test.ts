/** The tests of golden.test.ts on every wrong plan; that the reports are those beside the plans is checked in the short run too. */
import './golden.test.ts';
