#!/usr/bin/env node
// Hands arguments and streams to the command, and sees that it starts soon. `check` is one script (dist/check-script.js),
// kept with what V8 made of it the last time, so that nothing of it is parsed or compiled again; all other commands are
// modules. Old Node and new take this file, so it is plain JavaScript.
'use strict';

const fs = require('node:fs');
const { join } = require('node:path');

const SCRIPT = join(__dirname, '..', 'dist', 'check-script.js');
/** Where the build leaves what V8 made of the script, for the Node it was built with. */
const BUILT = join(__dirname, '..', 'dist', 'check-script.cache');
/** Letters of the digest that ends the script. */
const DIGEST = 64;
/** Letters at the head of what is kept: of which script it is, and of which Node. */
const HEAD = 256;
/** Kept scripts of other versions and other Nodes that stay beside a new one. */
const MOST_KEPT = 4;
/** bytecodes: on V8 11 functions are optimised so early that a plan of any size pays more for it than it gains */
const BUDGET = '--interrupt-budget=1000000';

/** This user's own folder for what can be made anew; undefined where there is none to be had. */
function ownFolder() {
  const { env } = process;
  if (env.NODE_DISABLE_COMPILE_CACHE) return undefined;
  if (process.platform === 'win32') return env.LOCALAPPDATA && join(env.LOCALAPPDATA, 'pullin', 'cache');
  const base = env.XDG_CACHE_HOME || (env.HOME && join(env.HOME, '.cache'));
  return base?.startsWith('/') ? join(base, 'pullin') : undefined;
}

/** Whether nobody but this user can have put it there. Windows keeps others out of the folders of a user by itself. */
function isOwn({ uid, mode }) {
  return process.getuid === undefined || (uid === process.getuid() && (mode & 0o022) === 0);
}

/**
 * Of which script and by which Node so many bytes were made. V8 asks for its own version and the length of the script alone, and
 * crashes on what another patch of Node made.
 */
function headOf(digest, length) {
  const { v8, modules } = process.versions;
  const { size } = fs.statSync(process.execPath);
  const head = [digest, process.version, v8, modules, process.platform, process.arch, size, length].join(' ');
  return head.slice(0, HEAD).padEnd(HEAD);
}

/** What V8 made of the script, from a file that nobody else can write in a folder that nobody else can; or undefined. */
function keptIn(folder, file, digest) {
  let handle;
  try {
    if (!isOwn(fs.lstatSync(folder))) return undefined;
    handle = fs.openSync(file, fs.constants.O_RDONLY | (fs.constants.O_NOFOLLOW ?? 0));
    const stat = fs.fstatSync(handle);
    if (!isOwn(stat) || !stat.isFile() || stat.size > 50e6) return undefined;
    const bytes = fs.readFileSync(handle);
    return bytes.latin1Slice(0, HEAD) === headOf(digest, bytes.length - HEAD)
      ? bytes.subarray(HEAD)
      : undefined;
  } catch {
    return undefined;
  } finally {
    if (handle !== undefined) fs.closeSync(handle);
  }
}

/** Writes what V8 made of the script, whole or not at all. That it cannot is no matter: the next start is slower. */
function keep(file, digest, made) {
  const half = `${file}.${process.pid}`;
  try {
    fs.writeFileSync(half, Buffer.concat([Buffer.from(headOf(digest, made.length), 'latin1'), made]), {
      mode: 0o600,
      flag: 'wx',
    });
    fs.renameSync(half, file);
  } catch {
    fs.rmSync(half, { force: true });
  }
}

/** Makes the folder, and leaves but a few of the files of other versions in it; whether it is fit to be read from. */
function madeReady(folder) {
  try {
    fs.mkdirSync(folder, { recursive: true, mode: 0o700 });
    if (!isOwn(fs.lstatSync(folder))) return false;
    const age = (name) => fs.statSync(join(folder, name)).mtimeMs;
    const kept = fs.readdirSync(folder).filter((name) => name.startsWith('check-script-'));
    const old = kept.map((name) => [age(name), name]).sort(([a], [b]) => b - a);
    for (const [, name] of old.slice(MOST_KEPT)) fs.rmSync(join(folder, name), { force: true });
    return true;
  } catch {
    return false;
  }
}

/** The script compiled, or what was made of it before, with the digest that both go by. */
function compiled(cached) {
  const { setFlagsFromString } = require('node:v8');
  const { Script } = require('node:vm');
  if (process.versions.v8.startsWith('11.')) setFlagsFromString(BUDGET);
  const source = fs.readFileSync(SCRIPT, 'latin1');
  const digest = source.slice(-DIGEST);
  const make = (cachedData) => new Script(source, { filename: SCRIPT, cachedData });
  for (const from of cached) {
    const bytes = from(digest);
    if (bytes === undefined) continue;
    const script = make(bytes);
    if (!script.cachedDataRejected) return { script, digest, fresh: false };
  }
  return { script: make(undefined), digest, fresh: true };
}

/** Runs the script, and resolves to the exit status. */
function run(script, args, io) {
  const module = { exports: {} };
  script.runInThisContext()(module.exports, require, module, SCRIPT, join(__dirname, '..', 'dist'));
  return module.exports.main(args, io);
}

async function check(args) {
  const folder = ownFolder();
  const own =
    folder &&
    ((digest) => join(folder, `check-script-${digest.slice(0, 16)}-${process.version}-${process.arch}`));
  const { script, digest, fresh } = compiled([
    (d) => keptIn(join(__dirname, '..', 'dist'), BUILT, d),
    (d) => (own === undefined ? undefined : keptIn(folder, own(d), d)),
  ]);
  const status = await run(script, args, process);
  if (fresh && own !== undefined && madeReady(folder)) keep(own(digest), digest, script.createCachedData());
  return status;
}

/** Keeps the modules of the other commands in the same way, where Node can. */
async function anyCommand(args) {
  const folder = ownFolder();
  const { enableCompileCache } = require('node:module');
  if (enableCompileCache !== undefined && folder !== undefined && madeReady(folder))
    enableCompileCache(join(folder, 'modules'));
  const { main } = await import('../dist/cli.js');
  return main(args, process);
}

if (require.main === module) {
  const args = process.argv.slice(2);
  (args[0] === 'check' ? check(args) : anyCommand(args)).then((status) => {
    process.exitCode = status;
  });
}

module.exports = { BUILT, compiled, keep, run };
