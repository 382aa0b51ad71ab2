/** The examples of every command's help. */
import './help.test.ts';
