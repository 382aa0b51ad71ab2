import './grow-examples.test.ts';
