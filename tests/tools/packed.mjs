// Installs the package as a stranger gets it and uses it from another folder. Needs a built dist/.
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { publint } from 'publint';
import { formatMessage } from 'publint/utils';
import ts from 'typescript';

const root = fileURLToPath(new URL('../..', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'pullin-packed-'));
const elsewhere = join(folder, 'elsewhere');
const installed = join(folder, 'clean', 'node_modules', 'pullin');

/** bytes; `check` is in it twice, among the modules of all commands and as the script that it starts from (a quarter of the whole) */
const MOST_BYTES = 1_000_000;

/** What the README links to in the repository alone. */
const FOR_CONTRIBUTORS = ['DEVELOPERS.md', 'tests/README.md'];

/** A script that uses the types as a stranger would, in a project without the types of Node or of any other package. */
const CONSUMER = `import { check, type Finding, NotAnswered, readMeter, readPlan, type Reading, type Report, study } from 'pullin';
const read = readPlan('', 'plan.yaml');
if (read.ok) {
  const shop = study(read.plan);
  const report: Report = check(shop);
  const first: Finding | undefined = report.findings[0];
  const reading: Reading = readMeter(shop, { positions: { open: ['planer'] }, between: ['K1.A1', 'K1.A2'] });
  const volts: number | null = reading.volts;
  const reason = (e: unknown) => (e instanceof NotAnswered ? e.reason : undefined);
  void [first?.id, volts, reason];
} else for (const { position, message } of read.errors) void [position.line, message.length];
`;

function npm(args, cwd) {
  // `npm test` says where npm is; started by hand, the one on the path serves.
  const cli = process.env.npm_execpath;
  const [command, first] = cli === undefined ? ['npm', []] : [process.execPath, [cli]];
  return execFileSync(command, [...first, ...args], {
    cwd,
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'inherit'],
  });
}

/** Runs the installed command from a folder that is not the package's and asks for one exit status. */
function pullin(args, status) {
  const command = join(
    folder,
    'clean',
    'node_modules',
    '.bin',
    process.platform === 'win32' ? 'pullin.cmd' : 'pullin',
  );
  const done = spawnSync(command, args, {
    cwd: elsewhere,
    encoding: 'utf8',
    shell: process.platform === 'win32',
  });
  if (done.error) throw done.error;
  if (done.status !== status) {
    throw new Error(
      `pullin ${args.join(' ')} ended with ${done.status}, not ${status}:\n${done.stdout}${done.stderr}`,
    );
  }
  return done.stdout;
}

function need(holds, what) {
  if (!holds) throw new Error(what);
}

const steps = {
  'pack the package': () => {
    need(existsSync(join(root, 'dist', 'cli.cjs')), 'dist/cli.cjs is missing: npm run build first');
    // dist/ stands already, so `prepare` need not build it again.
    npm(['pack', '--ignore-scripts', '--silent', '--pack-destination', folder], root);
  },
  'install it in a clean folder': () => {
    mkdirSync(elsewhere);
    mkdirSync(join(folder, 'clean'));
    const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
    const tarball = join(folder, `pullin-${version}.tgz`);
    const clean = join(folder, 'clean');
    // The prefix is named, lest npm takes a folder further up that happens to have node_modules.
    npm(
      [
        'install',
        '--prefix',
        clean,
        '--ignore-scripts',
        '--no-audit',
        '--no-fund',
        '--prefer-offline',
        tarball,
      ],
      clean,
    );
    need(!existsSync(join(folder, 'clean', 'node_modules', 'esbuild')), 'the build tools were installed too');
  },
  'pullin --help': () => need(pullin(['--help'], 0).includes('check'), 'the help names no check'),
  'pullin check on a right plan ends with 0': () =>
    pullin(['check', join(installed, 'examples/saltmarsh-lane.yaml')], 0),
  'pullin check on a wrong plan ends with 1': () => {
    const report = pullin(['check', join(installed, 'examples/wrong/planer-on-break-tab.yaml')], 1);
    need(report.includes('gate-on-wrong-tab'), 'the report does not name the finding');
  },
  'pullin page writes a page with its script in it': () => {
    pullin(['page', join(installed, 'examples/saltmarsh-lane.yaml'), '-o', 'page.html'], 0);
    const page = readFileSync(join(elsewhere, 'page.html'), 'utf8');
    need(
      page.includes(readFileSync(join(installed, 'dist/page-script.js'), 'utf8')),
      'the page has no script',
    );
  },
  'import the library': () => {
    const script = `import { check, readPlan, study } from 'pullin';
      import { readFileSync } from 'node:fs';
      const read = readPlan(readFileSync(process.argv[1]), 'plan.yaml');
      console.log(read.ok ? check(study(read.plan)).verdict : 'unread');`;
    const plan = join(installed, 'examples/saltmarsh-lane.yaml');
    const args = ['--input-type=module', '--eval', script, plan];
    const said = execFileSync(process.execPath, args, {
      cwd: join(folder, 'clean'),
      encoding: 'utf8',
    }).trim();
    need(said === 'pass', `the library judged "${said}", not "pass"`);
  },
  'its manual and its schemas are there': () => {
    const { man } = JSON.parse(readFileSync(join(installed, 'package.json'), 'utf8'));
    need(readFileSync(join(installed, man), 'utf8').includes('.SH NAME'), `${man} is no manual page`);
    need(pullin(['schema', 'check'], 0).includes('"$schema"'), 'no schema is printed');
  },
  'the script among the examples does what the tour says': () => {
    const name = 'examples/use-from-a-script.mjs';
    const said = execFileSync(process.execPath, [join(installed, name)], {
      cwd: elsewhere,
      encoding: 'utf8',
    });
    const tour = readFileSync(join(installed, 'examples/README.md'), 'utf8');
    need(
      tour.includes(`$ node ${name}\n${said}`),
      `examples/README.md does not have what it printed:\n${said}`,
    );
  },
  'every file that the README links to and that is not for contributors is in it': () => {
    const readme = readFileSync(join(installed, 'README.md'), 'utf8');
    const links = [...readme.matchAll(/\]\((?!https?:|#)([^)]+)\)/g)].map(([, file]) =>
      file.replace(/#.*/, ''),
    );
    need(links.length > 3, 'the README links to nothing');
    const gone = links.filter((f) => !FOR_CONTRIBUTORS.includes(f) && !existsSync(join(installed, f)));
    need(gone.length === 0, `the README links to ${gone.join(', ')}, which is not in the package`);
  },
  'its types can be used, by every way of finding them': () => {
    const consumer = join(folder, 'clean', 'consumer.mts');
    writeFileSync(consumer, CONSUMER);
    for (const [module, moduleResolution] of [
      [ts.ModuleKind.NodeNext, ts.ModuleResolutionKind.NodeNext],
      [ts.ModuleKind.ESNext, ts.ModuleResolutionKind.Bundler],
    ]) {
      const program = ts.createProgram([consumer], {
        ...{ module, moduleResolution, target: ts.ScriptTarget.ES2022, lib: ['lib.es2023.d.ts'], types: [] },
        ...{ strict: true, exactOptionalPropertyTypes: true, skipLibCheck: false, noEmit: true },
      });
      const [first] = ts.getPreEmitDiagnostics(program);
      need(first === undefined, first && ts.flattenDiagnosticMessageText(first.messageText, ' '));
    }
  },
  'what it says of itself holds': async () => {
    const { messages, pkg } = await publint({
      pkgDir: installed,
      level: 'suggestion',
      strict: true,
      pack: false,
    });
    const told = messages.map((m) => formatMessage(m, pkg, { color: false }) ?? m.code);
    need(told.length === 0, told.join('\n'));
  },
  'it stays small': () => {
    const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
    const { size } = statSync(join(folder, `pullin-${version}.tgz`));
    need(size < MOST_BYTES, `the tarball has ${size} bytes; at most ${MOST_BYTES} were agreed on`);
  },
};

try {
  for (const [name, step] of Object.entries(steps)) {
    const start = performance.now();
    try {
      await step();
    } catch (error) {
      console.log(`failed: ${name}\n${error.message}`);
      process.exitCode = 1;
      break;
    }
    console.log(`ok: ${name} (${((performance.now() - start) / 1000).toFixed(1)} s)`);
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}
