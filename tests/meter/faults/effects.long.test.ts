/** The same for every example that the oracle can walk. */
import './effects.test.ts';
