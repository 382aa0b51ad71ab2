/** Every example. */
import './json.test.ts';
