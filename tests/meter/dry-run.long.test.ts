/** The tests of dry-run.test.ts on larger shops. */
import './dry-run.test.ts';
