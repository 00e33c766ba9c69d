package page

import (
	"context"
	"errors"
	"io"
	"log"
	"net"
	"net/http"
	"time"
)

// farewell is how long those who are being answered when the program ends may take: a save is a
// moment, and who presses Ctrl-C is to have the terminal back within a second.
const farewell = 800 * time.Millisecond

// Serve answers on a listener until ctx ends, then lets those finish who are being
// answered. The listener should be on a loopback address.
func Serve(ctx context.Context, l net.Listener, h http.Handler) error {
	base, stop := context.WithCancel(context.WithoutCancel(ctx))
	defer stop()
	s := &http.Server{
		Handler:           h,
		BaseContext:       func(net.Listener) context.Context { return base },
		ReadHeaderTimeout: 5 * time.Second,
		ReadTimeout:       30 * time.Second,
		WriteTimeout:      5 * time.Minute, // a download is made in full before it is sent
		IdleTimeout:       2 * time.Minute,
		MaxHeaderBytes:    16 << 10,
		ErrorLog:          log.New(io.Discard, "", 0), // what a client did wrong it is told
	}
	strange := newStrangers(mostStrangers)
	strange.watch(s)
	ended := make(chan error, 1)
	go func() { ended <- s.Serve(l) }()
	select {
	case err := <-ended:
		return err
	case <-ctx.Done():
	}
	stop() // work is given up, and live pages are told
	strange.close()
	last, done := context.WithTimeout(context.WithoutCancel(ctx), farewell)
	defer done()
	if err := s.Shutdown(last); err != nil {
		_ = s.Close() // who is not done by now is cut off
	}
	if err := <-ended; !errors.Is(err, http.ErrServerClosed) {
		return err
	}
	return nil
}
