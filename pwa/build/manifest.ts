import type { ManifestOptions } from 'vite-plugin-pwa'

/** The installed app's name, colours and icons. The icons are ours: src in icons/mark.svg. */
export const manifest: Partial<ManifestOptions> = {
  id: '/',
  name: 'Lintel: learn to read smoke',
  short_name: 'Lintel',
  description: 'Learn to read smoke. Training only: never for use at an incident.',
  start_url: '/',
  scope: '/',
  display: 'standalone',
  background_color: '#f6f2e9',
  theme_color: '#f6f2e9',
  lang: 'en',
  categories: ['education'],
  icons: [
    { src: '/icons/mark.svg', sizes: 'any', type: 'image/svg+xml' },
    { src: '/icons/mark-192.png', sizes: '192x192', type: 'image/png' },
    { src: '/icons/mark-512.png', sizes: '512x512', type: 'image/png' },
    { src: '/icons/mark-mask-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
  ],
}
