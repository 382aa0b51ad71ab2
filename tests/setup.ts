import fc from 'fast-check';

// The same cases every time, so that a change is judged by what it changed; FC_SEED tries others.
fc.configureGlobal({ seed: Number(process.env.FC_SEED ?? 20261125) });
