package httpapi

import (
	"bytes"
	"net/http"
	"strings"

	"github.com/gofiber/fiber/v2"

	"lintel/engine"
	"lintel/quiz"
	"lintel/quiz/session"
	"lintel/server/desk"
)

func (a *api) getRosters(c *fiber.Ctx) error {
	all, err := a.Desk.Rosters()
	if err != nil {
		return err
	}
	return c.JSON(fiber.Map{"v": version, "rosters": all})
}

type rosterRequest struct {
	V     int            `json:"v"`
	Title string         `json:"title"`
	Seats []desk.NewSeat `json:"seats,omitempty"`
	CSV   *string        `json:"csv,omitempty"`
}

// saveRoster makes a roster or changes one.
func (a *api) saveRoster(c *fiber.Ctx) error {
	var request rosterRequest
	if err := readVersioned(c, &request, &request.V); err != nil {
		return err
	}
	if request.CSV != nil {
		if request.Seats != nil {
			return engine.Bad("csv", "is given beside seats", "give one of them")
		}
		seats, err := desk.ReadCSV(*request.CSV)
		if err != nil {
			return err
		}
		request.Seats = seats
	}
	id := param(c, "id")
	saved, err := a.Desk.SaveRoster(instructorOf(c), id, request.Title, request.Seats)
	if err != nil {
		return err
	}
	return c.Status(created(id)).JSON(fiber.Map{"v": version, "roster": saved})
}

// created is the status of what was made (it had no id) or changed.
func created(id string) int {
	if id == "" {
		return http.StatusCreated
	}
	return http.StatusOK
}

func (a *api) deleteRoster(c *fiber.Ctx) error {
	if err := a.Desk.DropRoster(instructorOf(c), param(c, "id")); err != nil {
		return err
	}
	return c.SendStatus(http.StatusNoContent)
}

func (a *api) getRosterCSV(c *fiber.Ctx) error {
	var out bytes.Buffer
	if err := a.Desk.WriteCSV(instructorOf(c), param(c, "id"), &out); err != nil {
		return err
	}
	return sendFile(c, "roster.csv", "text/csv; charset=utf-8", out.Bytes())
}

// sendFile answers with something to keep.
func sendFile(c *fiber.Ctx, name, kind string, content []byte) error {
	c.Set(fiber.HeaderContentType, kind)
	c.Set(fiber.HeaderContentDisposition, `attachment; filename="`+name+`"`)
	return c.Send(content)
}

type oneTimeReply struct {
	V       int    `json:"v"`
	Token   string `json:"token"`
	UntilMS int64  `json:"until_ms"`
}

func (a *api) postClaimCode(c *fiber.Ctx) error {
	token, until, err := a.Desk.ClaimCode(instructorOf(c), param(c, "id"), param(c, "seat"))
	if err != nil {
		return err
	}
	return c.JSON(oneTimeReply{version, token, until})
}

func (a *api) getSeatRecords(c *fiber.Ctx) error {
	limit, err := number(c, "limit", usualPage, maxPage)
	if err != nil {
		return err
	}
	records, next, err := a.Desk.SeatRecords(param(c, "id"), param(c, "seat"), strings.Clone(c.Query("after")), int(limit))
	return seatRecords(c, records, next, err)
}

func seatRecords(c *fiber.Ctx, records []quiz.Record, next string, err error) error {
	if err != nil {
		return err
	}
	if records == nil {
		records = []quiz.Record{}
	}
	reply := fiber.Map{"v": version, "records": records}
	if next != "" {
		reply["next"] = next
	}
	return c.JSON(reply)
}

// postClaim gives a seat of a roster to a device.
func (a *api) postClaim(c *fiber.Ctx) error {
	var request struct {
		V     int    `json:"v"`
		Token string `json:"token"`
		Place string `json:"place"`
	}
	if err := readVersioned(c, &request, &request.V); err != nil {
		return err
	}
	if request.Place == "" {
		request.Place = session.FirstPlace
	}
	claimed, err := a.Desk.Claim(deviceOf(c).ID, request.Token, request.Place)
	if err != nil {
		return err
	}
	return c.JSON(struct {
		V int `json:"v"`
		desk.Claimed
	}{version, claimed})
}

// getSeats lists the seats that the device holds.
func (a *api) getSeats(c *fiber.Ctx) error {
	seats, err := a.Desk.SeatsOf(deviceOf(c).ID)
	if err != nil {
		return err
	}
	return c.JSON(fiber.Map{"v": version, "seats": seats})
}

func (a *api) getOwnSeatRecords(c *fiber.Ctx) error {
	limit, err := number(c, "limit", usualPage, maxPage)
	if err != nil {
		return err
	}
	place := strings.Clone(c.Query("place", session.FirstPlace))
	records, next, err := a.Desk.OwnRecords(deviceOf(c).ID, place, strings.Clone(c.Query("after")), int(limit))
	return seatRecords(c, records, next, err)
}

func (a *api) getSets(c *fiber.Ctx) error {
	all, err := a.Desk.Sets()
	if err != nil {
		return err
	}
	return c.JSON(fiber.Map{"v": version, "sets": all})
}

// saveSet makes a set or changes one.
func (a *api) saveSet(c *fiber.Ctx) error {
	var request struct {
		V      int               `json:"v"`
		Title  string            `json:"title"`
		Scenes []session.Planned `json:"scenes"`
	}
	if err := readVersioned(c, &request, &request.V); err != nil {
		return err
	}
	id := param(c, "id")
	saved, err := a.Desk.SaveSet(instructorOf(c), id, request.Title, request.Scenes)
	if err != nil {
		return err
	}
	return c.Status(created(id)).JSON(fiber.Map{"v": version, "set": saved})
}

func (a *api) deleteSet(c *fiber.Ctx) error {
	if err := a.Desk.DropSet(instructorOf(c), param(c, "id")); err != nil {
		return err
	}
	return c.SendStatus(http.StatusNoContent)
}
