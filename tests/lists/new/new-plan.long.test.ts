import './new-plan.test.ts';
