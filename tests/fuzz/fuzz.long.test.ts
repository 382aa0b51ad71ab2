/** The whole of what the short test takes a twentieth of. */
import './fuzz.test.ts';
