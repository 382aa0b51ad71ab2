/** Of every command that tells it. */
import './progress.test.ts';
