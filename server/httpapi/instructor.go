package httpapi

import (
	"net/http"
	"strings"

	"github.com/gofiber/fiber/v2"

	"lintel/quiz"
	"lintel/quiz/session"
	"lintel/server/desk"
)

type doorReply struct {
	V         int      `json:"v"`
	SetUp     bool     `json:"set_up"`
	MaySignIn bool     `json:"may_sign_in"`
	Why       string   `json:"why,omitempty"`
	Addresses []string `json:"addresses"`
}

// getDoor says what may be done here before anybody has signed in.
func (a *api) getDoor(c *fiber.Ctx) error {
	all, err := a.Desk.Instructors()
	if err != nil {
		return err
	}
	reply := doorReply{V: version, SetUp: len(all) > 0, MaySignIn: a.encrypted(c) || ownMachine(c), Addresses: a.Addresses()}
	if !reply.MaySignIn {
		said := split(errPlain)
		reply.Why = said.What + ": " + said.Do
	}
	return c.JSON(reply)
}

type signInRequest struct {
	V          int    `json:"v"`
	Code       string `json:"code,omitempty"`
	CallSign   string `json:"call_sign,omitempty"`
	PassPhrase string `json:"pass_phrase"`
}

func readVersioned[T any](c *fiber.Ctx, into *T, v *int) error {
	if err := read(c, into); err != nil {
		return err
	}
	if *v != version {
		return wrongVersion()
	}
	return nil
}

func (a *api) postSetUp(c *fiber.Ctx) error {
	return a.signingIn(c, http.StatusCreated, func(r signInRequest) (desk.SignedIn, error) {
		return a.Desk.SetUp(r.Code, r.CallSign, r.PassPhrase)
	})
}

func (a *api) postSignIn(c *fiber.Ctx) error {
	where := a.from(c)
	return a.signingIn(c, http.StatusOK, func(r signInRequest) (desk.SignedIn, error) {
		return a.Desk.SignIn(r.CallSign, r.PassPhrase, where)
	})
}

func (a *api) postReset(c *fiber.Ctx) error {
	return a.signingIn(c, http.StatusOK, func(r signInRequest) (desk.SignedIn, error) {
		in, err := a.Desk.Redeem(r.Code, r.CallSign, r.PassPhrase)
		if err == nil {
			a.askBoards()
		}
		return in, err
	})
}

func (a *api) signingIn(c *fiber.Ctx, status int, try func(signInRequest) (desk.SignedIn, error)) error {
	var request signInRequest
	if err := readVersioned(c, &request, &request.V); err != nil {
		return err
	}
	in, err := try(request)
	if err != nil {
		return err
	}
	a.remember(c, in)
	return c.Status(status).JSON(a.me(in.Instructor))
}

type meReply struct {
	V        int                 `json:"v"`
	ID       string              `json:"id"`
	CallSign string              `json:"call_sign"`
	Role     quiz.InstructorRole `json:"role"`
	Engine   string              `json:"engine"`
	Content  string              `json:"content"`
}

func (a *api) me(who quiz.Instructor) meReply {
	return meReply{V: version, ID: who.ID, CallSign: who.CallSign, Role: who.Role, Engine: a.Engine, Content: a.Content}
}

func (a *api) getMe(c *fiber.Ctx) error { return c.JSON(a.me(instructorOf(c))) }

// askBoards has every board come back and show its cookie again, after sign-ins
// have ended.
func (a *api) askBoards() { a.Viewers.Expel("", session.Board) }

// postSignOut ends the sign-in of this browser.
func (a *api) postSignOut(c *fiber.Ctx) error {
	if err := a.Desk.SignOut(a.held(c, sessionCookie)); err != nil {
		return err
	}
	a.askBoards()
	a.cookie(c, sessionCookie, "", a.Now().AddDate(-1, 0, 0))
	return c.SendStatus(http.StatusNoContent)
}

func (a *api) postPhrase(c *fiber.Ctx) error {
	var request struct {
		V   int    `json:"v"`
		Old string `json:"old"`
		New string `json:"new"`
	}
	if err := readVersioned(c, &request, &request.V); err != nil {
		return err
	}
	in, err := a.Desk.ChangePhrase(instructorOf(c), a.held(c, browserCookie), request.Old, request.New)
	if err != nil {
		return err
	}
	a.askBoards()
	a.remember(c, in)
	return c.SendStatus(http.StatusNoContent)
}

func (a *api) postInvite(c *fiber.Ctx) error {
	var request struct {
		V    int                 `json:"v"`
		Role quiz.InstructorRole `json:"role"`
	}
	if err := readVersioned(c, &request, &request.V); err != nil {
		return err
	}
	code, until, err := a.Desk.Invite(instructorOf(c), request.Role)
	if err != nil {
		return err
	}
	return c.JSON(fiber.Map{"v": version, "code": code, "until_ms": until})
}

func (a *api) getInstructors(c *fiber.Ctx) error {
	all, err := a.Desk.Instructors()
	if err != nil {
		return err
	}
	return c.JSON(fiber.Map{"v": version, "instructors": all})
}

func (a *api) putInstructor(c *fiber.Ctx) error {
	var request struct {
		V       int                 `json:"v"`
		Role    quiz.InstructorRole `json:"role"`
		ShutOut bool                `json:"shut_out"`
	}
	if err := readVersioned(c, &request, &request.V); err != nil {
		return err
	}
	changed, err := a.Desk.Change(instructorOf(c), param(c, "id"), request.Role, request.ShutOut)
	if err != nil {
		return err
	}
	if changed.ShutOut {
		a.askBoards()
		a.Viewers.Expel("", session.Lead)
	}
	return c.JSON(fiber.Map{"v": version, "instructor": changed})
}

// getAudit is who did what, newest first.
func (a *api) getAudit(c *fiber.Ctx) error {
	before, err := number(c, "before", 0, quiz.MaxSeq)
	if err != nil {
		return err
	}
	limit, err := number(c, "limit", usualPage, maxPage)
	if err != nil {
		return err
	}
	deeds, err := a.Desk.Deeds(instructorOf(c), before, int(limit))
	if err != nil {
		return err
	}
	reply := fiber.Map{"v": version, "deeds": deeds}
	if n := len(deeds); n == int(limit) && deeds[n-1].Seq > 1 {
		reply["next"] = deeds[n-1].Seq
	}
	return c.JSON(reply)
}

// param is a part of the path, copied: fiber's own lives as long as the request.
func param(c *fiber.Ctx, name string) string { return strings.Clone(c.Params(name)) }
