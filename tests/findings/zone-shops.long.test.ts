import './zone-shops.test.ts';
