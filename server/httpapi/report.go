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

// paper writes a report in the language that is asked for, else in English, with the
// point of whoever asks, else that of the language, and by their clock, else by UTC.
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
	point, err := pointOf(c)
	if err != nil {
		return err
	}
	if err := write(&r, report.Reader{Language: language, Says: a.Says(language), Zone: zone, Point: point}, &out); err != nil {
		return err
	}
	if err := a.Desk.Exported(instructorOf(c), r.Title); err != nil {
		return err
	}
	return sendFile(c, name, kind, out.Bytes())
}

// pointOf is what whoever asks writes before decimals: Spanish has a comma in some
// countries and a point in others.
func pointOf(c *fiber.Ctx) (string, error) {
	switch point := c.Query("point"); point {
	case "", ".", ",":
		return strings.Clone(point), nil
	}
	return "", engine.Bad("point", "is not what stands before decimals", "give a point, a comma or none")
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
