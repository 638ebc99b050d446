// A page with a stage in it, as the maker's page has it, for the tests to speak to.
const frame = document.querySelector('iframe')
const host = window.host = { ready: 0, gone: [], hidden: 0, loaded: 0, bytes: null, view: null }
window.stageReady = w => {
  w.addEventListener('pagehide', () => { host.hidden++; host.lost = w.stageLost === true })
  host.ready++
  if (host.bytes) host.paint()
}
window.stageGone = (w, why) => host.gone.push(why)
frame.addEventListener('load', () => host.loaded++)
host.stage = () => frame.contentWindow
host.give = async (name, scale, x, y, evening) => {
  host.bytes = await (await fetch(name)).arrayBuffer()
  host.view = [scale, x, y, evening]
  document.body.className = evening ? 'evening' : ''
  return host.paint()
}
host.paint = () => {
  const s = host.stage(), wrong = s.stageDrawing(host.bytes, host.bytes.byteLength)
  s.stageView(...host.view)
  s.stageFrame()
  return wrong
}
host.pan = (dx, dy) => {
  const s = host.stage(), before = s.stageCounts().draws
  host.view[1] += dx
  host.view[2] += dy
  s.stageView(...host.view)
  s.stageFrame()
  return s.stageCounts().draws - before
}
host.counts = () => JSON.stringify({ ...host.stage().stageCounts(), frames: host.stage().stageFrames })
host.lose = () => {
  const gl = frame.contentDocument.querySelector('canvas').getContext('webgl2')
  gl.getExtension('WEBGL_lose_context').loseContext()
}
host.svg = async (name, x, y) => {
  const img = document.querySelector('img') || document.body.appendChild(new Image())
  img.className = 'shown'
  img.style.left = x + 'px'
  img.style.top = y + 'px'
  img.src = name
  await img.decode()
  return ''
}
host.plain = () => { document.querySelector('img').className = '' ; return '' }
