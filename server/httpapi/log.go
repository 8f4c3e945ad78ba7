package httpapi

import (
	"fmt"
	"log/slog"
	"runtime/debug"
	"strings"
	"time"

	"github.com/gofiber/fiber/v2"

	"lintel/quiz"
)

// logged writes one line a request. Paths hold no secret and queries are left
// out; headers and bodies are never written. An address is written only for
// what was refused, where a keeper needs it.
func (a *api) logged(c *fiber.Ctx) error {
	start := time.Now()
	err := c.Next()
	if err != nil {
		if failed := a.fail(c, err); failed != nil {
			return failed
		}
	}
	status := c.Response().StatusCode()
	line := []slog.Attr{
		slog.String("method", strings.Clone(c.Method())),
		slog.String("path", clip(c.Path())),
		slog.Int("status", status),
		slog.Float64("ms", float64(time.Since(start).Microseconds())/1000),
	}
	if device, ok := c.Locals(deviceLocal).(quiz.Device); ok {
		line = append(line, slog.String("device", device.ID))
	}
	level := slog.LevelDebug
	switch {
	case status >= 500:
		level = slog.LevelError
	case status == 401 || status == 403 || status == 429:
		level = slog.LevelWarn
		line = append(line, slog.String("from", c.Context().RemoteAddr().String()))
	case strings.HasPrefix(c.Path(), "/api/"):
		level = slog.LevelInfo
	}
	a.Log.LogAttrs(c.Context(), level, "request", line...)
	return nil
}

// maxLoggedPath bounds what a stranger can write into the log (chosen by us).
const maxLoggedPath = 200

func clip(path string) string {
	if len(path) > maxLoggedPath {
		path = path[:maxLoggedPath]
	}
	return strings.Clone(path)
}

// recovered turns a panic into an error, with its stack in the log.
func (a *api) recovered(c *fiber.Ctx) (err error) {
	defer func() {
		if fault := recover(); fault != nil {
			a.Log.Error("request panicked", "fault", fault, "stack", string(debug.Stack()))
			err = fmt.Errorf("httpapi: panic: %v", fault)
		}
	}()
	return c.Next()
}
