const go = new Go()
window.ended = false
WebAssembly.instantiateStreaming(fetch('pane.wasm'), go.importObject).then(b => go.run(b.instance)).then(() => { window.ended = true })
window.glass = () => document.querySelector('iframe')
window.inside = () => glass().contentWindow
window.counts = () => JSON.stringify({ ...inside().stageCounts(), frames: inside().stageFrames })
window.lose = () => inside().document.querySelector('canvas').getContext('webgl2').getExtension('WEBGL_lose_context').loseContext()
