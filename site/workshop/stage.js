// Starts the program that its own tag names, in a document of its own inside the page's.
// Before it starts, two things of the window are changed. An animation frame that is
// asked for is kept and runs when the page calls stageFrame: the program asks for ever.
// And the device's pixel ratio is at most 2, or what the address says; when it changes the
// document loads again, since the program reads it once.
const tag = document.currentScript.dataset
const page = parent === window ? {} : parent
const tell = (name, ...args) => { if (typeof page[name] === 'function') page[name](window, ...args) }
let held, ready = false
window.stageFrames = 0
window.requestAnimationFrame = f => {
  held = f
  if (!ready) {
    ready = true
    queueMicrotask(() => tell('stageReady'))
  }
  return 1
}
window.stageFrame = () => {
  const f = held
  if (!f || again()) return false
  held = undefined
  window.stageFrames++
  f(performance.now())
  return true
}
window.stageTimed = () => { // one frame to its last pixel, in ms
  const gl = document.querySelector('canvas').getContext('webgl2'), begun = performance.now()
  window.stageFrame()
  gl.readPixels(0, 0, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, new Uint8Array(4))
  return performance.now() - begun
}
const most = parseFloat(new URLSearchParams(location.search).get('pixels')) || 2
const real = Object.getOwnPropertyDescriptor(window, 'devicePixelRatio').get.bind(window)
const ratio = () => Math.min(real(), most)
const was = ratio()
Object.defineProperty(window, 'devicePixelRatio', { get: () => was })
window.stagePixels = () => was
const again = () => {
  if (ratio() === was) return false
  location.reload()
  return true
}
const watch = w => w.matchMedia(`(resolution: ${real()}dppx)`).addEventListener('change', () => again() || watch(w), { once: true })
for (const w of new Set([window, parent])) watch(w) // of the page too: a browser may tell only the outermost document
addEventListener('webglcontextlost', () => { window.stageLost = true }, true) // the program then loads the document again
const gone = e => tell('stageGone', String(e))
const start = async () => {
  const go = new Go()
  const answer = await fetch(tag.program)
  if (!answer.ok) throw new Error(`${tag.program}: ${answer.status}`)
  const built = await WebAssembly.instantiateStreaming(answer, go.importObject)
  window.stageMemory = () => built.instance.exports.mem.buffer.byteLength
  go.run(built.instance).then(() => gone('the program ended'), gone)
}
start().catch(gone)
