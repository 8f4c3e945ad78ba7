package httpapi

import (
	"bytes"
	"io"
	"strings"

	"github.com/gofiber/fiber/v2"

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

// paper writes a report in the language that is asked for, else in English.
func (a *api) paper(c *fiber.Ctx, name, kind string, write func(*session.Report, string, report.Says, io.Writer) error) error {
	r, err := a.Classes.Report(param(c, "id"))
	if err != nil {
		return err
	}
	var out bytes.Buffer
	language := strings.Clone(c.Query("language"))
	if err := write(&r, language, a.Says(language), &out); err != nil {
		return err
	}
	if err := a.Desk.Exported(instructorOf(c), r.Title); err != nil {
		return err
	}
	return sendFile(c, name, kind, out.Bytes())
}
