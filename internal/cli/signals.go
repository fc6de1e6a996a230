package cli

import (
	"context"
	"os"
	"os/signal"
	"syscall"
)

// interrupted is the signal that ended a run.
type interrupted struct{ syscall.Signal }

// Error implements error.
func (i interrupted) Error() string { return i.Signal.String() }

// untilSignal returns a context that ends when the run is interrupted or told
// to end. A second signal kills it at once. A signal that the run was started
// to ignore, as with nohup, stays ignored.
func untilSignal(ctx context.Context) (context.Context, func()) {
	ctx, cancel := context.WithCancelCause(ctx)
	told := make(chan os.Signal, 1)
	for _, s := range []os.Signal{syscall.SIGINT, syscall.SIGTERM} {
		if !signal.Ignored(s) {
			signal.Notify(told, s)
		}
	}
	go func() {
		select {
		case <-ctx.Done():
		case s := <-told:
			signal.Stop(told)
			cancel(interrupted{s.(syscall.Signal)})
		}
	}()
	return ctx, func() {
		signal.Stop(told)
		cancel(nil)
	}
}
