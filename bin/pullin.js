#!/usr/bin/env node
import * as module from 'node:module';

// Newer versions of Node keep compiled code between runs; older ones do not know the call.
module.enableCompileCache?.();

const { main } = await import('../dist/cli.js');
process.exitCode = await main(process.argv.slice(2), process);
