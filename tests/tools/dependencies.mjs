// The packages that come with ours: how many, how large, and what each is for, from package-lock.json, node_modules and the
// table of reasons in DEVELOPERS.md.
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';

function sizeOf(folder) {
  return readdirSync(folder, { withFileTypes: true }).reduce((sum, entry) => {
    if (entry.name === 'node_modules') return sum;
    const path = join(folder, entry.name);
    return sum + (entry.isDirectory() ? sizeOf(path) : statSync(path).size);
  }, 0);
}

/** Where a package that another asks for lies: in its own folder of packages, or in one further up. */
function found(packages, from, name) {
  for (let at = from; ; at = dirname(dirname(at)).replace(/^\.$/, '')) {
    const path = at === '' ? `node_modules/${name}` : `${at}/node_modules/${name}`;
    if (packages[path] !== undefined) return path;
    if (at === '') throw new Error(`package-lock.json has no ${name} for ${from}`);
  }
}

function withAllItNeeds(packages, path, seen = new Set()) {
  if (seen.has(path)) return seen;
  seen.add(path);
  for (const name of Object.keys(packages[path].dependencies ?? {}))
    withAllItNeeds(packages, found(packages, path, name), seen);
  return seen;
}

/** The first clause of the reason that DEVELOPERS.md has for a package. */
function reasonFor(guide, name) {
  const row = guide.split('\n').find((line) => line.startsWith(`| \`${name}\``));
  const reason = row?.split('|')[2]?.trim();
  if (!reason) throw new Error(`DEVELOPERS.md does not say why there is ${name}`);
  return reason.split('; ')[0];
}

const kilobytes = (bytes) => `${Math.round(bytes / 1000)} kB`;

export function dependencies(root) {
  const { packages } = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8'));
  const guide = readFileSync(join(root, 'DEVELOPERS.md'), 'utf8');
  const own = Object.keys(packages[''].dependencies);
  const all = new Set();
  const rows = own.map((name) => {
    const needed = [...withAllItNeeds(packages, `node_modules/${name}`)];
    for (const path of needed) all.add(path);
    const bytes = needed.reduce((sum, path) => sum + sizeOf(join(root, path)), 0);
    return `| \`${name}\` | ${reasonFor(guide, name)} | ${needed.length} | ${kilobytes(bytes)} |`;
  });
  const absent = [...all].filter((path) => !existsSync(join(root, path)));
  if (absent.length > 0) throw new Error(`not installed: ${absent.join(', ')}`);
  const scripts = [...all].filter((path) => packages[path].hasInstallScript === true);
  const licences = [...new Set([...all].map((path) => packages[path].license))].sort();
  const sum = [...all].reduce((total, path) => total + sizeOf(join(root, path)), 0);
  return [
    `${own.length} packages are asked for and bring ${all.size - own.length} more, ${(sum / 1e6).toFixed(1)} MB in all, under ${licences.join(', ')}. ${
      scripts.length === 0 ? 'None' : scripts.join(', ')
    } runs a script when it is installed.`,
    '',
    '| package | what for | packages | size |',
    '|---|---|---|---|',
    ...rows,
  ];
}
