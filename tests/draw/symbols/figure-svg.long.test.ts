/** The tests of figure-svg.test.ts with more of what is made at random. */
import './figure-svg.test.ts';
