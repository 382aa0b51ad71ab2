/** The tests of zone-shops.test.ts on every wrong shop, with the reports beside them. */
import './zone-shops.test.ts';
