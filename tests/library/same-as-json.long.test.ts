/** The same of plans of every sort. */
import './same-as-json.test.ts';
