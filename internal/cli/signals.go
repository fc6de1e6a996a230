package cli

import (
	"context"
	"os"
	"os/signal"
	"syscall"
)

// interrupted is the signal that ended a run.
type interrupted struct {
	number int
	os.Signal
}

// Error implements error.
func (i *interrupted) Error() string { return i.Signal.String() }

// untilSignal returns a context that ends when the run is interrupted or told
// to end. A second signal kills it at once.
func untilSignal(ctx context.Context) (context.Context, func()) {
	ctx, cancel := context.WithCancelCause(ctx)
	told := make(chan os.Signal, 1)
	signal.Notify(told, syscall.SIGINT, syscall.SIGTERM)
	go func() {
		select {
		case <-ctx.Done():
		case s := <-told:
			signal.Stop(told)
			number, _ := s.(syscall.Signal)
			cancel(&interrupted{int(number), s})
		}
	}()
	return ctx, func() {
		signal.Stop(told)
		cancel(nil)
	}
}
