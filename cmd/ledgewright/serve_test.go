//go:build !js

package main

import (
	"bytes"
	"context"
	"io"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgewright/site"
)

func TestServeOnABusyPort(t *testing.T) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	defer l.Close()
	var out, errs bytes.Buffer
	code := run([]string{"serve", "--addr", l.Addr().String()}, streams{nil, &out, &errs})
	require.Equal(t, unusable, code)
	require.Contains(t, errs.String(), l.Addr().String()+" is in use")
	require.Contains(t, errs.String(), "--addr")
}

func TestServeEndsWhenItIsTold(t *testing.T) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	pages := site.Pages{"index.html": []byte("still here")}
	ctx, stop := context.WithCancel(t.Context())
	done := make(chan error)
	go func() { done <- serveUntil(ctx, l, site.Handler(pages.Open)) }()
	r, err := http.Get("http://" + l.Addr().String() + "/")
	require.NoError(t, err)
	body, err := io.ReadAll(r.Body)
	require.NoError(t, err)
	require.NoError(t, r.Body.Close())
	require.Equal(t, "still here", string(body))
	stop()
	require.NoError(t, <-done)
}

func TestServeADirectory(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "index.html"), []byte("from a directory"), 0o600))
	require.NoError(t, os.WriteFile(filepath.Join(filepath.Dir(dir), "secret.txt"), []byte("secret"), 0o600))
	files, err := (&serve{Dir: dir}).files()
	require.NoError(t, err)
	body, ok := files("index.html")
	require.True(t, ok)
	require.Equal(t, "from a directory", string(body))
	_, ok = files("../secret.txt")
	require.False(t, ok, "nothing outside the directory is served")
}
