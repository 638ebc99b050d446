package main

import (
	"context"
	"errors"
	"fmt"
	"net"
	"net/http"
	"os"
	"os/signal"
	"syscall"
	"time"

	"ledgewright/site"
)

// serve shows the pages until it is told to stop.
type serve struct {
	Addr string `help:"Address to listen on, as host:port." default:"localhost:8080"`
	Dir  string `help:"Serve this directory instead of the pages in the program." type:"path"`
}

func (c *serve) Run(s *streams) error {
	files, err := c.files()
	if err != nil {
		return err
	}
	l, err := net.Listen("tcp", c.Addr)
	if err != nil {
		return listenError(c.Addr, err)
	}
	fmt.Fprintf(s.err, "Ledgewright is at http://%s (stop with Ctrl+C)\n", l.Addr())
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	return serveUntil(ctx, l, site.Handler(files))
}

// files returns what is served: the pages in the program, or a directory.
func (c *serve) files() (site.Source, error) {
	if c.Dir == "" {
		pages, err := site.Build()
		return pages.Open, err
	}
	root, err := os.OpenRoot(c.Dir)
	if err != nil {
		return nil, err
	}
	return func(path string) ([]byte, bool) {
		body, err := root.ReadFile(path)
		return body, err == nil
	}, nil
}

// listenError says which address could not be had, and what to do about it.
func listenError(addr string, err error) error {
	if errors.Is(err, syscall.EADDRINUSE) {
		return fmt.Errorf("%s is in use by another program: choose another address, such as --addr localhost:8090", addr)
	}
	return fmt.Errorf("cannot listen on %s: %w; choose another address with --addr", addr, err)
}

// serveUntil answers requests until ctx is done, then lets those under way finish.
func serveUntil(ctx context.Context, l net.Listener, h http.Handler) error {
	srv := &http.Server{Handler: h, ReadHeaderTimeout: 10 * time.Second}
	done := make(chan error, 1)
	go func() { done <- srv.Serve(l) }()
	select {
	case err := <-done:
		return err
	case <-ctx.Done():
	}
	late, cancel := context.WithTimeout(context.Background(), 3*time.Second)
	defer cancel()
	return srv.Shutdown(late)
}
