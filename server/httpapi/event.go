package httpapi

import (
	"errors"
	"net/http"
	"strconv"

	"github.com/gofiber/fiber/v2"

	"lintel/engine"
	"lintel/quiz"
)

type eventsRequest struct {
	V      int          `json:"v"`
	Events []quiz.Event `json:"events"`
}

type eventsReply struct {
	V     int    `json:"v"`
	Acked uint64 `json:"acked"`
}

// postEvents stores a batch, all or none, and answers when it is durable. What
// was answered in a class is in the class's log then too.
func (a *api) postEvents(c *fiber.Ctx) error {
	device := deviceOf(c)
	var request eventsRequest
	if err := read(c, &request); err != nil {
		return err
	}
	if request.V != version {
		return wrongVersion()
	}
	if err := quiz.ValidateBatch(device.ID, request.Events); err != nil {
		return a.withAcked(device.ID, err)
	}
	if !a.limits.events(device.ID, len(request.Events)) {
		return errTooMany
	}
	acked, entered, err := a.Store.Commit(device.ID, request.Events, a.Classes.Lines(device.ID, request.Events))
	if err != nil {
		return a.withAcked(device.ID, err)
	}
	a.Classes.Entered(entered)
	a.Acked(device.ID, acked)
	return c.Status(http.StatusOK).JSON(eventsReply{V: version, Acked: acked})
}

// withAcked adds to a gap the number from which to send again.
func (a *api) withAcked(device string, err error) error {
	if !errors.Is(err, quiz.ErrGap) {
		return err
	}
	acked, failed := a.Store.Acked(device)
	if failed != nil {
		return failed
	}
	return &gapError{acked: acked}
}

// Page sizes of records, chosen by us: of large ones fewer come (quiz.PageBytes).
const (
	usualPage = 100
	maxPage   = 200
)

type recordsReply struct {
	V       int           `json:"v"`
	Records []quiz.Record `json:"records"`
	Next    uint64        `json:"next,omitempty"` // give as after for the next page; absent on the last
}

// getRecords returns the device's own records in order.
func (a *api) getRecords(c *fiber.Ctx) error {
	after, err := number(c, "after", 0, quiz.MaxSeq)
	if err != nil {
		return err
	}
	limit, err := number(c, "limit", usualPage, maxPage)
	if err != nil {
		return err
	}
	device := deviceOf(c).ID
	records, err := a.Store.Records(device, after, int(limit))
	if err != nil {
		return err
	}
	if len(records) == 0 {
		return c.JSON(recordsReply{V: version, Records: []quiz.Record{}})
	}
	acked, err := a.Store.Acked(device)
	if err != nil {
		return err
	}
	reply := recordsReply{V: version, Records: records}
	if last := records[len(records)-1].Seq; last < acked {
		reply.Next = last
	}
	return c.JSON(reply)
}

// number reads a query parameter from 0 (limit: 1) to most.
func number(c *fiber.Ctx, name string, usual, most uint64) (uint64, error) {
	text := c.Query(name)
	if text == "" {
		return usual, nil
	}
	n, err := strconv.ParseUint(text, 10, 64)
	if err != nil || n > most || name == "limit" && n == 0 {
		return 0, engine.Bad(name, "is not a number that fits", "give a whole number up to "+strconv.FormatUint(most, 10))
	}
	return n, nil
}

type stateReply struct {
	V         int    `json:"v"`
	Acked     uint64 `json:"acked"`
	Engine    string `json:"engine"`
	Content   string `json:"content"`
	Validated bool   `json:"validated"`
}

// getState says how far the device's history is held and by which version the
// server scores.
func (a *api) getState(c *fiber.Ctx) error {
	acked, err := a.Store.Acked(deviceOf(c).ID)
	if err != nil {
		return err
	}
	return c.JSON(stateReply{V: version, Acked: acked, Engine: a.Engine, Content: a.Content, Validated: a.Validated})
}
