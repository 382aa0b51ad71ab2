/** More texts through the formatter. */
import './manual.test.ts';
