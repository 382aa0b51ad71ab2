/** With the command itself telling the names. */
import './completion.test.ts';
