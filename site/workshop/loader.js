// Starts the program that its own tag names, or shows why it could not: one of the
// sentences that stand in the page, by its data-why.
performance.mark('readable')
const tag = document.currentScript.dataset
const show = why => {
  const place = document.getElementById('page'), waits = document.querySelectorAll('[data-waits]')
  place.hidden = waits.length === 0 // what stood there was the program's, and it is gone
  waits.forEach(e => { e.hidden = true })
  document.querySelectorAll('[data-why]').forEach(e => { e.hidden = e.dataset.why !== why })
}
const cause = (e, other) => e instanceof RangeError || /memory/i.test(e) ? 'memory'
  : e instanceof WebAssembly.CompileError || e instanceof WebAssembly.LinkError ? 'old' : other
const stopped = e => { console.error(e); show(cause(e, 'stopped')) }
const count = async body => {
  const bar = document.querySelector('progress[data-waits]'), reader = body.getReader()
  for (let at = 0, part = await reader.read(); !part.done; part = await reader.read()) bar.value = (at += part.value.length) / tag.size
}
const start = async () => {
  if (typeof WebAssembly !== 'object' || !WebAssembly.instantiateStreaming) return show('old')
  const go = new Go()
  // What lives in the program is a few MB, so that at Go's own 100 % of waste it would collect
  // at nearly every change, inside the same task.
  go.env = {GOGC: '400', GOMEMLIMIT: '48MiB'}
  let built
  try {
    const answer = await fetch(tag.program)
    if (!answer.ok) throw new Error(`${tag.program}: ${answer.status}`)
    count(answer.clone().body).catch(console.error)
    built = await (/^application\/wasm/.test(answer.headers.get('Content-Type'))
      ? WebAssembly.instantiateStreaming(answer, go.importObject)
      : WebAssembly.instantiate(await answer.arrayBuffer(), go.importObject))
  } catch (e) {
    console.error(e)
    return show(cause(e, 'away'))
  }
  addEventListener('error', e => { if (e.error instanceof WebAssembly.RuntimeError || e.error instanceof RangeError) stopped(e.error) })
  go.run(built.instance).then(() => stopped('the program ended'), stopped)
}
start()
