package visitor

import (
	"context"
	"encoding/json"
	"os"
	"path/filepath"
	"strconv"
	"strings"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/dom"
	"github.com/chromedp/cdproto/inspector"
	"github.com/chromedp/cdproto/page"
	. "github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"

	"ledgewright/engine/plan"
)

func quote(s string) string {
	text, _ := json.Marshal(s) // a string always has one
	return string(text)
}

// A Kept is a job as the browser keeps it.
type Kept struct {
	Revision int
	Plan     plan.Plan
	Steps    []json.RawMessage // that can be undone
	Undone   []json.RawMessage // that can be made again
}

// Kept returns the job that was kept last. There may be none yet.
func (b *Tab) Kept() (k Kept, ok bool) {
	b.T.Helper()
	text := b.KeptText()
	if text == "" {
		return k, false
	}
	var raw struct {
		Revision      int
		Plan          json.RawMessage
		Steps, Undone []json.RawMessage
	}
	require.NoError(b.T, json.Unmarshal([]byte(text), &raw))
	p, err := plan.Decode(raw.Plan)
	require.NoError(b.T, err)
	return Kept{raw.Revision, p, raw.Steps, raw.Undone}, true
}

// KeptText returns the record of the job that was kept last, or nothing.
func (b *Tab) KeptText() string {
	b.T.Helper()
	return b.Await(`new Promise(done => { const r = indexedDB.open('ledgewright'); r.onerror = () => done(''); r.onsuccess = () => {
	  const tx = r.result.transaction(['settings', 'jobs', 'states']), end = s => { r.result.close(); done(s) }
	  tx.objectStore('settings').get('last').onsuccess = e => { const id = e.target.result?.text
	    if (!id) return end('')
	    tx.objectStore('jobs').get(id).onsuccess = e => { const j = e.target.result
	      if (!j) return end('')
	      tx.objectStore('states').get([id, j.revision, j.blank]).onsuccess = e => end(e.target.result?.record || '') } } } })`)
}

// Keeps waits until the job that is kept is as it should be, and returns it.
func (b *Tab) Keeps(what string, as func(Kept) bool) (k Kept) {
	b.T.Helper()
	b.wait(func() bool {
		var ok bool
		k, ok = b.Kept()
		return ok && as(k)
	}, func() string { return "the plan to be kept with " + what + "; its steps are " + k.said() })
	return k
}

// Did reports whether one of the steps holds a text, such as "do":"move".
func (k Kept) Did(text string) bool {
	for _, s := range k.Steps {
		if strings.Contains(strings.ReplaceAll(string(s), `\"`, `"`), text) {
			return true
		}
	}
	return false
}

// said are the steps in a few words.
func (k Kept) said() string {
	out := strconv.Itoa(len(k.Steps))
	for _, s := range k.Steps {
		out += "\n" + string(s)
	}
	return out + "\nundone " + strconv.Itoa(len(k.Undone))
}

// Steps waits until so many steps can be undone, and returns the job.
func (b *Tab) Steps(n int) Kept {
	b.T.Helper()
	return b.Keeps(strconv.Itoa(n)+" steps to undo", func(k Kept) bool { return len(k.Steps) == n })
}

// Undo takes the last step back by the button on the wall, whose name says which, and
// returns the job as it is kept then. What was done before must be kept already.
func (b *Tab) Undo(what string) Kept {
	b.T.Helper()
	before, _ := b.Kept()
	b.Tap("button", "Undo: "+what)
	b.See("button", "Redo: "+what)
	return b.Keeps("one more step undone", func(k Kept) bool { return len(k.Undone) == len(before.Undone)+1 })
}

// Saved does something that makes the browser save a file, and returns the file.
func (b *Tab) Saved(by func()) []byte {
	b.T.Helper()
	dir, err := os.MkdirTemp("", "saved")
	require.NoError(b.T, err)
	defer os.RemoveAll(dir)
	yes := true
	_, err = CallBrowser(b.Ctx, browser.SetDownloadBehavior, browser.SetDownloadBehaviorParams{
		Behavior: browser.SetDownloadBehaviorBehaviorAllowAndName, BrowserContextID: FromContext(b.Ctx).BrowserContextID, DownloadPath: dir, EventsEnabled: &yes})
	require.NoError(b.T, err)
	progress := BrowserEvents(b.Ctx, browser.DownloadProgress)
	by()
	for e, err := range progress {
		require.NoError(b.T, err)
		if e.State == browser.DownloadProgressStateCompleted {
			body, err := os.ReadFile(filepath.Join(dir, e.GUID))
			require.NoError(b.T, err)
			return body
		}
	}
	return nil
}

// Upload chooses a file for the button of that name, as the browser's own dialog does.
func (b *Tab) Upload(name, path string) {
	b.T.Helper()
	t := b.See("button", name)
	_, err := Call(b.Ctx, dom.SetFileInputFiles, dom.SetFileInputFilesParams{Files: []string{path}, BackendNodeID: t.node})
	require.NoError(b.T, err)
}

// Kill ends the process of the page, as a system does that is short of memory: nothing of
// the page is asked or told. Then the page is opened again.
func (b *Tab) Kill() {
	b.T.Helper()
	crashed := Events(b.Ctx, inspector.TargetCrashed)
	soon, cancel := context.WithTimeout(b.Ctx, patience)
	defer cancel()
	go func() { _, _ = Call(soon, page.Crash, cdp.Empty{}) }() // nobody is left to answer
	for range crashed {
		break
	}
	b.Wait("the page again", func() bool { return Do(b.Ctx, Navigate(b.House.URL)) == nil }) // by another process
	b.Until(`performance.getEntriesByName('usable').length`, "1")
}
