package httpapi

import (
	"bytes"
	"io"
	"strconv"
	"strings"
	"time"

	"github.com/gofiber/fiber/v2"

	"lintel/engine"
	"lintel/quiz/session"
	"lintel/server/report"
)

func (a *api) getReport(c *fiber.Ctx) error {
	r, err := a.Classes.Report(param(c, "id"))
	if err != nil {
		return err
	}
	return c.JSON(fiber.Map{"v": version, "report": r})
}

func (a *api) getReportCSV(c *fiber.Ctx) error {
	return a.paper(c, "class.csv", "text/csv; charset=utf-8", report.CSV)
}

func (a *api) getReportPDF(c *fiber.Ctx) error {
	return a.paper(c, "class.pdf", "application/pdf", report.PDF)
}

// paper writes a report in the language that is asked for, else in English, and by
// the clock of whoever asks, else by UTC.
func (a *api) paper(c *fiber.Ctx, name, kind string, write func(*session.Report, report.Reader, io.Writer) error) error {
	r, err := a.Classes.Report(param(c, "id"))
	if err != nil {
		return err
	}
	var out bytes.Buffer
	language := strings.Clone(c.Query("language"))
	zone, err := zoneOf(c)
	if err != nil {
		return err
	}
	if err := write(&r, report.Reader{Language: language, Says: a.Says(language), Zone: zone}, &out); err != nil {
		return err
	}
	if err := a.Desk.Exported(instructorOf(c), r.Title); err != nil {
		return err
	}
	return sendFile(c, name, kind, out.Bytes())
}

// furthestMin is how far a clock may be from UTC, min: the furthest that any has
// been is 14 hours (IANA time zone database).
const furthestMin = 14 * 60

// zoneOf is the clock of whoever asks: their minutes east of UTC.
func zoneOf(c *fiber.Ctx) (*time.Location, error) {
	text := c.Query("east_min", "0")
	east, err := strconv.Atoi(text)
	if err != nil || east < -furthestMin || east > furthestMin {
		return nil, engine.Bad("east_min", "is not a clock's distance from UTC in minutes", "give a whole number from -840 to 840, or none")
	}
	return time.FixedZone("", east*60), nil
}
