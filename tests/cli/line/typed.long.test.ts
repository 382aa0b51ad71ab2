/** Every command. */
import './typed.test.ts';
