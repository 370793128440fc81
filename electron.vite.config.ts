import { basename, dirname, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'electron-vite';
import type { Plugin } from 'vite';

const root = fileURLToPath(new URL('.', import.meta.url));
const mainFolder = resolve(root, 'out/main');

/**
 * Keeps `new URL('./beside.ts', import.meta.url)` true in the bundle: a TypeScript file (a worker) becomes a bundle of its own,
 * any other file (a font, the sample venue) is looked for where it lies in the project.
 */
const filesBeside = (): Plugin => {
  const workers = new Map<string, string>();
  return {
    name: 'files-beside',
    enforce: 'pre',
    buildStart: () => workers.clear(),
    transform(code, id) {
      if (!/\.ts$/.test(id) || id.includes('node_modules') || !code.includes('import.meta.url')) return null;
      const changed = code.replace(/new URL\(\s*'([^']+)'\s*,\s*import\.meta\.url,?\s*\)/g, (whole, path: string) => {
        if (!path.startsWith('.')) return whole;
        const file = resolve(dirname(id), path);
        if (!file.endsWith('.ts'))
          return `new URL(${JSON.stringify(relative(mainFolder, file).replaceAll('\\', '/'))}, import.meta.url)`;
        const fileName = `${basename(file, '.ts')}.js`;
        if (workers.get(fileName) !== file) {
          if (workers.has(fileName)) this.error(`two workers are named ${fileName}`);
          workers.set(fileName, file);
          this.emitFile({ type: 'chunk', id: file, fileName });
        }
        return `new URL('./${fileName}', import.meta.url)`;
      });
      return changed === code ? null : { code: changed, map: null };
    },
  };
};

export default defineConfig({
  main: {
    plugins: [filesBeside()],
    build: {
      outDir: mainFolder,
      minify: false,
      rollupOptions: {
        input: { main: resolve(root, 'src/main/main.ts') },
        output: { format: 'es', entryFileNames: '[name].js', chunkFileNames: '[name]-[hash].js' },
      },
    },
  },
  preload: {
    build: {
      outDir: resolve(root, 'out/preload'),
      minify: false,
      rollupOptions: {
        input: { preload: resolve(root, 'src/preload/preload.ts') },
        // A sandboxed preload cannot be an ES module.
        output: { format: 'cjs', entryFileNames: '[name].cjs' },
      },
    },
  },
  renderer: {
    root: resolve(root, 'src/renderer'),
    plugins: [react()],
    build: {
      outDir: resolve(root, 'out/renderer'),
      minify: true,
      // Fonts and pictures stay files of their own, as the pages' content policy asks.
      assetsInlineLimit: 0,
      rollupOptions: { input: resolve(root, 'src/renderer/index.html') },
    },
  },
});
