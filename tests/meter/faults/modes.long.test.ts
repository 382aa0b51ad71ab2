/** The same for every plan there is. */
import './modes.test.ts';
