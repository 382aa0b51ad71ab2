/** The shops of three hundred gates too. */
import './shops-half-said.test.ts';
