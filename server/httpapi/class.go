package httpapi

import (
	"errors"
	"net/http"
	"strconv"
	"strings"

	"github.com/gofiber/fiber/v2"
	"github.com/gorilla/websocket"

	"lintel/quiz"
	"lintel/quiz/session"
	"lintel/server/class"
	"lintel/server/handover"
)

const leaderLocal = "leader"

// leads lets a request pass from an instructor, or from a phone that was handed
// this class.
func (a *api) leads(c *fiber.Ctx) error {
	scheme, key, _ := strings.Cut(c.Get(fiber.HeaderAuthorization), " ")
	if !strings.EqualFold(scheme, "Lead") {
		return a.instructor(c)
	}
	id, by, err := a.Classes.LeadOf(strings.Clone(key))
	if err != nil {
		return err
	}
	if id != c.Params("id") {
		return class.ErrNotLead
	}
	if !a.limits.request("lead "+key[len(key)-16:], len(c.Request().Body())) {
		return errTooMany
	}
	c.Locals(leaderLocal, by)
	return c.Next()
}

// leaderOf is who acts, in words.
func leaderOf(c *fiber.Ctx) string {
	if by, ok := c.Locals(leaderLocal).(string); ok {
		return by
	}
	return instructorOf(c).CallSign
}

func (a *api) postClass(c *fiber.Ctx) error {
	var request struct {
		V int `json:"v"`
		class.Plan
	}
	if err := readVersioned(c, &request, &request.V); err != nil {
		return err
	}
	opened, err := a.Classes.Open(instructorOf(c), request.Plan)
	if err != nil {
		return err
	}
	return c.Status(http.StatusCreated).JSON(fiber.Map{"v": version, "class": opened})
}

func (a *api) getClasses(c *fiber.Ctx) error {
	all, err := a.Classes.List()
	if err != nil {
		return err
	}
	for i := range all {
		all[i].Connected = a.Viewers.Connected(all[i].ID)
	}
	return c.JSON(fiber.Map{"v": version, "classes": all})
}

func (a *api) getClass(c *fiber.Ctx) error {
	listed, err := a.Classes.Listed(param(c, "id"))
	if err != nil {
		return err
	}
	listed.Connected = a.Viewers.Connected(listed.ID)
	return c.JSON(fiber.Map{"v": version, "class": listed})
}

// postAct does something to a class, and answers when it is durable.
func (a *api) postAct(c *fiber.Ctx) error {
	var request struct {
		V   int       `json:"v"`
		Act class.Act `json:"act"`
	}
	if err := readVersioned(c, &request, &request.V); err != nil {
		return err
	}
	seq, err := a.Classes.Do(leaderOf(c), param(c, "id"), request.Act)
	if err != nil {
		return err
	}
	return c.JSON(fiber.Map{"v": version, "seq": seq})
}

func (a *api) getPerson(c *fiber.Ctx) error {
	n, err := strconv.Atoi(c.Params("person"))
	if err != nil {
		return class.ErrNoPerson
	}
	person, err := a.Classes.Person(param(c, "id"), n)
	if err != nil {
		return err
	}
	return c.JSON(fiber.Map{"v": version, "person": person})
}

// getScene is the item of a scene with its truth, for the board.
func (a *api) getScene(c *fiber.Ctx) error {
	state, err := a.Classes.State(param(c, "id"))
	if err != nil {
		return err
	}
	scene, _ := state.SceneOf(c.Params("scene"))
	if scene == nil {
		return class.ErrNoClass
	}
	return c.JSON(fiber.Map{"v": version, "scene": scene})
}

func (a *api) postCode(c *fiber.Ctx) error {
	door, err := a.Classes.NewDoor(leaderOf(c), param(c, "id"))
	if err != nil {
		return err
	}
	return c.JSON(fiber.Map{"v": version, "door": door})
}

func (a *api) postOfferLead(c *fiber.Ctx) error {
	token, until, err := a.Classes.OfferLead(instructorOf(c), param(c, "id"))
	if err != nil {
		return err
	}
	return c.JSON(oneTimeReply{version, token, until})
}

// postLead hands a class to the phone that shows the token.
func (a *api) postLead(c *fiber.Ctx) error {
	var request struct {
		V     int    `json:"v"`
		Token string `json:"token"`
	}
	if err := readVersioned(c, &request, &request.V); err != nil {
		return err
	}
	id, key, err := a.Classes.TakeLead(request.Token)
	if err != nil {
		return err
	}
	return c.JSON(fiber.Map{"v": version, "class": id, "key": key})
}

func (a *api) getLeads(c *fiber.Ctx) error {
	leads, err := a.Classes.Leads(param(c, "id"))
	if err != nil {
		return err
	}
	return c.JSON(fiber.Map{"v": version, "leads": leads})
}

func (a *api) deleteLead(c *fiber.Ctx) error {
	id := param(c, "id")
	if err := a.Classes.DropLead(instructorOf(c).CallSign, id, param(c, "lead")); err != nil {
		return err
	}
	// Every lead comes back and is asked again who it is; this one is refused.
	a.Viewers.Expel(id, session.Lead)
	return c.SendStatus(http.StatusNoContent)
}

// getClassLive hands the connection to the live sockets of a class. A board is
// known by its cookie, which comes with the request; all others say who they are
// in the first frame.
func (a *api) getClassLive(c *fiber.Ctx) error {
	id := param(c, "id")
	_, err := a.whoIs(c)
	board := err == nil
	return handover.Upgrade(c, upgrader, func(ws *websocket.Conn) { a.Viewers.Serve(ws, id, board) })
}

type joinRequest struct {
	V         int               `json:"v"`
	Token     string            `json:"token,omitempty"`
	Code      string            `json:"code,omitempty"`
	CallSigns map[string]string `json:"call_signs,omitempty"`
}

type joinReply struct {
	V         int                 `json:"v"`
	Class     string              `json:"class"`
	Places    []session.PlaceView `json:"places"`
	Engine    string              `json:"engine"`
	Content   string              `json:"content"`
	Rehearsal bool                `json:"rehearsal"`
}

// postJoin takes a device into a class. Whoever holds a right token or code is
// registered on the way, so that no flood of strangers keeps a class out.
func (a *api) postJoin(c *fiber.Ctx) error {
	device, secret, ok := claimOf(c)
	if !ok {
		return errNotSignedIn
	}
	var request joinRequest
	if err := readVersioned(c, &request, &request.V); err != nil {
		return err
	}
	id, err := a.Classes.Find(class.Way{Token: request.Token, Code: request.Code})
	if err != nil {
		return err
	}
	if err := a.Classes.Takes(id, device); err != nil {
		return err
	}
	known, err := a.Store.Authenticate(device, secret)
	if errors.Is(err, quiz.ErrUnknownDevice) {
		sign := request.CallSigns[session.FirstPlace]
		if err := quiz.ValidateDevice(device, secret, sign); err != nil {
			return err
		}
		known, err = a.Store.Welcome(device, secret, sign)
	}
	if err != nil {
		return err
	}
	if !a.limits.request(known.ID, len(c.Request().Body())) {
		return errTooMany
	}
	joined, err := a.Classes.Join(known, id, request.CallSigns)
	if err != nil {
		return err
	}
	return c.JSON(joinReply{V: version, Class: id, Places: joined.Places, Engine: joined.Class.Engine, Content: joined.Class.Content, Rehearsal: joined.Class.Rehearsal})
}
