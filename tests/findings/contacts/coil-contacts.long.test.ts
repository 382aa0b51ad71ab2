/** The tests of coil-contacts.test.ts on all there is, not on a share. */
import './coil-contacts.test.ts';
