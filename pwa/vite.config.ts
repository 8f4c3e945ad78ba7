import { defineConfig } from 'vite'
import { VitePWA } from 'vite-plugin-pwa'
import { manifest } from './build/manifest.ts'
import { brotli } from './build/brotli.ts'
import { firstScreen } from './build/first-screen.ts'

// A file is a round trip, and some work of the page: what the first screen needs
// comes in one, what its store needs in one, and what screens have in common in one.
const groups = [
  { name: 'start', tags: ['$initial' as const] },
  { name: 'store', test: /src\/(local|practice)\/|node_modules\/(idb|ts-fsrs)\//, minShareCount: 2 },
  { name: 'shared', minShareCount: 3 },
]

// The build goes to site/dist, one level below the folder that embed.go embeds,
// so that a fresh checkout compiles before anything was built.
export default defineConfig({
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  build: {
    outDir: 'site/dist', emptyOutDir: true, target: 'es2022', modulePreload: { polyfill: false },
    rolldownOptions: { output: { codeSplitting: { groups } } },
  },
  worker: { format: 'es' },
  server: { fs: { allow: ['..'] } }, // the buildings are read from content
  plugins: [
    firstScreen(),
    VitePWA({
      registerType: 'prompt', // an update waits until a person asks for it
      injectRegister: false, // src/sw/register.ts does it, after first paint
      manifest,
      workbox: {
        globPatterns: ['**/*.{html,js,css,wasm,svg,png,webmanifest}'],
        maximumFileSizeToCacheInBytes: 8 * 1024 * 1024, // the engine, uncompressed
        navigateFallback: '/shell.html',
        navigateFallbackDenylist: [/^\/api\//, /^\/healthz/, /^\/readyz/],
        clientsClaim: true,
        cleanupOutdatedCaches: true,
        inlineWorkboxRuntime: true,
        sourcemap: false,
      },
    }),
    brotli(),
  ],
  test: { include: ['src/**/*.test.ts', 'fidelity/**/*.test.mjs'], environment: 'node' },
} as Parameters<typeof defineConfig>[0])
