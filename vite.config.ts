import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { builtinModules } from 'node:module';
import react from '@vitejs/plugin-react';
import { defineConfig, type EnvironmentOptions, type Plugin } from 'vite';

/** A file of the machine's own that no bundle can hold; it is looked for when a library is opened, from dist/ upwards. */
const NATIVE = '@photostructure/sqlite';

/** One bundle for Node. It stands alone: dist/ runs without node_modules, and starts faster for it. */
function bundle(
  input: Record<string, string>,
  format: 'cjs' | 'es',
  external: readonly string[] = [],
): EnvironmentOptions {
  const ending = format === 'cjs' ? 'js' : 'mjs';
  return {
    consumer: 'server',
    // React has a slow half for its developers, and decides at run time which one is meant.
    define: { 'process.env.NODE_ENV': '"production"' },
    resolve: {
      noExternal: true,
      external: [NATIVE, ...external, ...builtinModules, ...builtinModules.map((name) => `node:${name}`)],
      builtins: [...builtinModules, /^node:/],
    },
    build: {
      ssr: true,
      target: 'node20',
      outDir: 'dist',
      emptyOutDir: false,
      // Half the text to parse: a fifth of the command's time on a short log.
      minify: 'oxc',
      rollupOptions: {
        input,
        // What is loaded later takes what it shares with the program from the program (see load-program.ts).
        preserveEntrySignatures: 'allow-extension',
        output: {
          entryFileNames: `[name].${ending}`,
          chunkFileNames: `chunks/[name]-[hash].${ending}`,
          format,
          // A file of ES modules finds what stands beside it by where it is, and a part of it stands elsewhere.
          ...(format === 'cjs' && { codeSplitting: inOneFile(Object.values(input)) }),
        },
      },
    },
  };
}

/**
 * Everything that an entry needs from the start in its own file, also what is needed by parts that are loaded later:
 * V8 compiles one file better than several, and keeps compiled code of one.
 */
function inOneFile(entries: readonly string[]) {
  const test = (id: string) => entries.some((entry) => id.replaceAll('\\', '/').endsWith(entry));
  return { groups: [{ name: 'whole', test, includeDependenciesRecursively: true }] };
}

/**
 * A file for Electron's runtime, alone in its environment so that it shares no chunk: a sandboxed page loads its
 * preload file as the one that it is, and `electron` is there in the runtime and nowhere else.
 */
function windowFile(name: 'main' | 'preload'): EnvironmentOptions {
  const made = bundle({ [name]: `electron/window/${name}.ts` }, 'cjs');
  return {
    ...made,
    resolve: { ...made.resolve, external: [...(made.resolve!.external as string[]), 'electron'] },
    build: {
      ...made.build,
      outDir: 'dist/window',
      rollupOptions: {
        ...made.build!.rollupOptions,
        output: { entryFileNames: '[name].cjs', format: 'cjs', codeSplitting: false },
      },
    },
  };
}

/** What the runtime reads first: which file to run, and what to call itself. */
const windowPackage: Plugin = {
  name: 'window-package',
  applyToEnvironment: ({ name }) => name === 'window',
  generateBundle() {
    const { name, version } = JSON.parse(readFileSync('package.json', 'utf8')) as Record<string, string>;
    const source = JSON.stringify({ name, productName: 'Halfdot', version, main: 'main.cjs' });
    this.emitFile({ type: 'asset', fileName: 'package.json', source: `${source}\n` });
  },
};

/** The project is of ES modules; what ships is CommonJS, which Node starts 20 ms sooner, and ASCII, which it reads sooner. */
const program: Plugin = {
  name: 'program',
  applyToEnvironment: ({ name }) => name === 'program',
  generateBundle(_, files) {
    for (const file of Object.values(files))
      if (file.type === 'chunk') file.code = file.isEntry ? wrapped(escaped(file.code)) : escaped(file.code);
    this.emitFile({ type: 'asset', fileName: 'package.json', source: '{ "type": "commonjs" }\n' });
  },
};

/** A function around the program, as its loader expects: written here, the loader has no copy to make. */
function wrapped(code: string): string {
  return `(function (exports, require) {${code}\n})`;
}

/** Code with an escape for every character that is not ASCII. */
function escaped(code: string): string {
  return code.replaceAll(
    /[\u0080-\uffff]/g,
    (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}

/** The page: served by both hosts from one folder, its worker a module beside it. */
const page: EnvironmentOptions = {
  consumer: 'client',
  build: {
    outDir: 'dist/page',
    emptyOutDir: false,
    target: 'es2022',
    chunkSizeWarningLimit: 1200,
    // No inline code and no inline pictures: the policy of the page allows neither.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rollupOptions: { input: 'renderer/index.html' },
  },
};

/** The page's HTML stands where its source does, below a folder of that name; it is served from the top. */
function liftPage(): void {
  const made = readFileSync('dist/page/renderer/index.html', 'utf8');
  writeFileSync('dist/page/index.html', made.replaceAll('../assets/', './assets/'));
  rmSync('dist/page/renderer', { recursive: true });
}

/** Builds what runs on Node: the program, the command that loads it, and the developer's tools that share its code. */
export default defineConfig({
  plugins: [program, windowPackage, react()],
  root: '.',
  base: './',
  worker: { format: 'es' },
  environments: {
    page,
    program: bundle({ program: 'electron/cli/program.ts' }, 'cjs'),
    command: bundle({ halfdot: 'electron/cli/main.ts' }, 'cjs'),
    // Alone: a thread takes nothing from the program that starts it.
    debriefs: bundle(
      {
        'debrief-worker': 'electron/library/debrief-worker.ts',
        'lines-worker': 'electron/cli/lines-worker.ts',
      },
      'es',
    ),
    app: bundle({ app: 'electron/loopback/main.ts' }, 'es'),
    window: windowFile('main'),
    preload: windowFile('preload'),
    tools: bundle(
      {
        bench: 'tests/bench/bench.ts',
        licences: 'tests/support/make-licences.ts',
        pictures: 'tests/support/make-pictures.ts',
        samples: 'tests/support/make-samples.ts',
        simulate: 'tests/support/simulate/simulate.ts',
        sizes: 'tests/support/make-sizes.ts',
        'edit-library': 'tests/support/library/edit-library.ts',
        'make-code-cache': 'electron/cli/make-code-cache.ts',
      },
      'es',
      // It finds its own files beside it; who makes pictures has it installed.
      ['playwright-core', 'vite'],
    ),
  },
  builder: {
    async buildApp({ build, environments }) {
      rmSync('dist', { recursive: true, force: true });
      for (const name of ['program', 'command', 'debriefs', 'app', 'window', 'preload', 'tools', 'page'])
        await build(environments[name]!);
      liftPage();
    },
  },
});
