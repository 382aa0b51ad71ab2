/** All of `nominal.test.ts`. */
import './nominal.test.ts';
