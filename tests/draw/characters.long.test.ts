/** The tests of characters.test.ts on every plan. */
import './characters.test.ts';
