declare module '*.wasm?url' {
  const url: string
  export default url
}

// Go's own start-up script, copied from the toolchain by pwa/build.
declare module '*/wasm_exec.js'
