/** The tests of contact-words.test.ts on all there is, not on a share. */
import './contact-words.test.ts';
