/** The tests of html.test.ts on every example. */
import './html.test.ts';
