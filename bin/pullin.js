#!/usr/bin/env node
// Hands arguments and streams to the command, and sees that it starts soon. All that the check of one plan needs is one script
// (dist/check.cjs), kept with what V8 made of it the last time, so that nothing of it is parsed or compiled again; the other
// commands take from it what they share with it. Old Node and new take this file, so it is plain JavaScript.
'use strict';

const fs = require('node:fs');
const { join } = require('node:path');

const DIST = join(__dirname, '..', 'dist');
const SCRIPT = join(DIST, 'check.cjs');
/** Where the build leaves what V8 made of the script, for the Node it was built with. */
const BUILT = join(DIST, 'check.cache');
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
    const kept = fs.readdirSync(folder).filter((name) => name.startsWith('check-'));
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
  const wrapped = `(function (exports, require, module, __filename, __dirname) {${source}\n})`;
  const make = (cachedData) => new Script(wrapped, { filename: SCRIPT, cachedData });
  for (const from of cached) {
    const bytes = from(digest);
    if (bytes === undefined) continue;
    const script = make(bytes);
    if (!script.cachedDataRejected) return { script, digest, fresh: false };
  }
  return { script: make(undefined), digest, fresh: true };
}

/** Runs the script, as what others take from it as well, and gives what it exports. */
function run(script) {
  const module = { id: SCRIPT, filename: SCRIPT, loaded: true, exports: {} };
  require.cache[SCRIPT] = module;
  const requires = (id) => require(id.startsWith('./') ? join(DIST, id) : id);
  script.runInThisContext()(module.exports, requires, module, SCRIPT, DIST);
  return module.exports;
}

/** Keeps what is loaded beside the script in the same way, where Node can. */
function keepOthers(folder) {
  const { enableCompileCache } = require('node:module');
  if (enableCompileCache !== undefined && folder !== undefined && madeReady(folder))
    enableCompileCache(join(folder, 'modules'));
}

async function command(args) {
  const folder = ownFolder();
  const own =
    folder && ((digest) => join(folder, `check-${digest.slice(0, 16)}-${process.version}-${process.arch}`));
  const { script, digest, fresh } = compiled([
    (d) => keptIn(DIST, BUILT, d),
    (d) => (own === undefined ? undefined : keptIn(folder, own(d), d)),
  ]);
  const check = run(script);
  if (!isOneCheck(args)) {
    keepOthers(folder);
    return require('../dist/cli.cjs').main(args, process);
  }
  const status = await check.main(args, process);
  if (fresh && own !== undefined && madeReady(folder)) keep(own(digest), digest, script.createCachedData());
  return status;
}

/** Whether the script alone can do it: the check of one plan, printed once. In doubt all commands are loaded. */
function isOneCheck([command, ...rest]) {
  const others = ['--', '--watch', '--format', '--at-once'];
  const named = rest.filter((arg) => arg === '-' || !arg.startsWith('-'));
  return command === 'check' && named.length === 1 && !rest.some((arg) => others.includes(arg.split('=')[0]));
}

if (require.main === module) {
  command(process.argv.slice(2)).then((status) => {
    process.exitCode = status;
  });
}

module.exports = { BUILT, compiled, keep, run };
