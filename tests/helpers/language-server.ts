/** A general YAML language server over its standard input, spoken to as an editor does (Language Server Protocol 3.17). */
import { type ChildProcess, spawn } from 'node:child_process';
import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';

interface Message {
  readonly id?: number;
  readonly method?: string;
  readonly result?: unknown;
  readonly params?: unknown;
}

interface Item {
  readonly label: string;
  readonly insertText?: string;
  readonly documentation?: string | { readonly value: string };
}

/** What an editor shows at a place: completions by label, and the text under the pointer. */
export interface Editor {
  completions(text: string): Promise<readonly Item[]>;
  hover(text: string): Promise<string>;
  problems(text: string): Promise<readonly string[]>;
  close(): void;
}

/** Opens an editor in which every file is held against a schema. `|` in a text is where the cursor stands. */
export async function editorWith(schemaFile: string): Promise<Editor> {
  const server = createRequire(import.meta.url).resolve('yaml-language-server/bin/yaml-language-server');
  const child = spawn(process.execPath, [server, '--stdio'], { stdio: ['pipe', 'pipe', 'ignore'] });
  const connection = new Connection(child, (params) =>
    params.items.map((item) =>
      item.section === 'yaml'
        ? {
            schemas: { [pathToFileURL(schemaFile).href]: '*.yaml' },
            schemaStore: { enable: false },
            completion: true,
            hover: true,
            validate: true,
          }
        : {},
    ),
  );
  await connection.request('initialize', {
    processId: process.pid,
    rootUri: null,
    capabilities: {
      workspace: { configuration: true, didChangeConfiguration: { dynamicRegistration: true } },
      textDocument: { completion: { completionItem: { snippetSupport: true } } },
    },
  });
  connection.notify('initialized', {});
  connection.notify('workspace/didChangeConfiguration', { settings: null });
  let opened = 0;
  const open = (text: string) => {
    const at = text.indexOf('|');
    const before = text.slice(0, Math.max(at, 0)).split('\n');
    const uri = `file:///plan-${opened++}.yaml`;
    connection.notify('textDocument/didOpen', {
      textDocument: { uri, languageId: 'yaml', version: 1, text: at < 0 ? text : text.replace('|', '') },
    });
    return {
      textDocument: { uri },
      position: { line: before.length - 1, character: before.at(-1)!.length },
    };
  };
  const completions = async (text: string) => {
    const found = (await connection.request('textDocument/completion', open(text))) as {
      readonly items?: readonly Item[];
    } | null;
    return found?.items ?? [];
  };
  // It answers before it has fetched its settings; with the schema it has something to offer here.
  for (let tries = 0; tries < 100 && (await completions('|')).length === 0; tries++)
    await new Promise((done) => setTimeout(done, 20));
  return {
    completions,
    async hover(text) {
      const found = (await connection.request('textDocument/hover', open(text))) as {
        readonly contents: { readonly value: string };
      } | null;
      return found?.contents.value ?? '';
    },
    problems: async (text) => connection.diagnostics(open(text).textDocument.uri),
    close: () => child.kill(),
  };
}

type Configured = { readonly items: readonly { readonly section: string }[] };

class Connection {
  private read = Buffer.alloc(0);
  private next = 1;
  private readonly waiting = new Map<number, (result: unknown) => void>();
  private readonly told = new Map<string, (problems: readonly string[]) => void>();

  constructor(
    private readonly child: ChildProcess,
    private readonly configuration: (params: Configured) => unknown,
  ) {
    child.stdout!.on('data', (part: Buffer) => {
      this.read = Buffer.concat([this.read, part]);
      for (let m = this.take(); m !== undefined; m = this.take()) this.receive(m);
    });
  }

  private take(): Message | undefined {
    const end = this.read.indexOf('\r\n\r\n');
    if (end < 0) return undefined;
    const length = Number(/Content-Length: (\d+)/i.exec(this.read.subarray(0, end).toString())![1]);
    const start = end + 4;
    if (this.read.length < start + length) return undefined;
    const body = this.read.subarray(start, start + length).toString();
    this.read = this.read.subarray(start + length);
    return JSON.parse(body) as Message;
  }

  private receive({ id, method, result, params }: Message): void {
    if (method === 'textDocument/publishDiagnostics') {
      const { uri, diagnostics } = params as { uri: string; diagnostics: { message: string }[] };
      this.told.get(uri)?.(diagnostics.map((d) => d.message));
    } else if (method !== undefined && id !== undefined) {
      const answer = method === 'workspace/configuration' ? this.configuration(params as Configured) : null;
      this.send({ id, result: answer });
    } else if (id !== undefined) this.waiting.get(id)?.(result);
  }

  private send(message: object): void {
    const body = JSON.stringify({ jsonrpc: '2.0', ...message });
    this.child.stdin!.write(`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`);
  }

  request(method: string, params: object): Promise<unknown> {
    const id = this.next++;
    return new Promise((done) => {
      this.waiting.set(id, done);
      this.send({ id, method, params });
    });
  }

  notify(method: string, params: object): void {
    this.send({ method, params });
  }

  /** What the server finds wrong with a file that was opened. */
  diagnostics(uri: string): Promise<readonly string[]> {
    return new Promise((done) => this.told.set(uri, done));
  }
}
